package holdfast.listening.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChromaTest {

  /** Hertz by A = 440 Hz (ISO 16) and twelve equal steps to an octave. */
  @ParameterizedTest(name = "{0} Hz")
  @CsvSource({
    "220, 0",
    "440, 0",
    "1760, 0",
    "233.08, 3",
    "466.16, 3",
    "261.63, 9",
    "523.25, 9",
    "1046.5, 9",
    "415.30, 33",
    "830.61, 33"
  })
  void a_tone_sounds_in_its_pitch_class_whatever_its_octave(double hertz, int expected) {
    float[] tone = new float[Chroma.SPAN];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = (float) (0.3 * Math.sin(2 * Math.PI * hertz * i / HalfRate.RATE));
    }
    float[] chroma = new float[36];
    new Chroma(36).of(tone, 0, chroma);
    int strongest = 0;
    double energy = 0;
    for (int c = 0; c < chroma.length; c++) {
      strongest = chroma[c] > chroma[strongest] ? c : strongest;
      energy += chroma[c] * chroma[c];
    }
    assertEquals(expected, strongest);
    assertEquals(1, energy, 1e-3);
  }
}
