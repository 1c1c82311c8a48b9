package holdfast.backing.sound;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.mistake.UserMistake;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import javax.sound.midi.Instrument;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Patch;
import javax.sound.midi.Soundbank;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StreamSynthTest {

  private static final double RATE = StreamSynth.FORMAT.getFrameRate();

  @TempDir Path folder;

  private static StreamSynth builtIn() {
    return StreamSynth.open(SoundBank.builtIn()).orElseThrow();
  }

  /** The left channel of so many seconds, full scale 1. */
  private static double[] left(StreamSynth synth, double seconds) {
    int frames = (int) Math.round(seconds * RATE);
    byte[] bytes = new byte[frames * 4];
    synth.draw(bytes);
    double[] samples = new double[frames];
    for (int i = 0; i < frames; i++) {
      samples[i] = ((bytes[4 * i] & 0xFF) | bytes[4 * i + 1] << 8) / 32768.0;
    }
    return samples;
  }

  private static int firstSound(double[] samples, int from) {
    for (int i = from; i < samples.length; i++) {
      if (Math.abs(samples[i]) > 2.0 / 32768) {
        return i;
      }
    }
    throw new AssertionError("all is silent from frame " + from);
  }

  /** A side stick's own attack: the built-in sample is silent for its first three frames. */
  private static final int ATTACK_FRAMES = 3;

  @Test
  void a_stamped_note_starts_on_its_sample_wherever_the_block_begins() {
    int[] delays = new int[3];
    double[] starts = {0.5, 0.503_217, 0.511_111};
    for (int i = 0; i < starts.length; i++) {
      try (StreamSynth synth = builtIn()) {
        synth.send(Messages.noteOn(9, 37, 100), Math.round(starts[i] * 1e6));
        delays[i] = firstSound(left(synth, 1), 0) - (int) Math.round(starts[i] * RATE);
      }
    }
    for (int delay : delays) {
      assertEquals(StreamSynth.DELAY_FRAMES + ATTACK_FRAMES, delay, 1);
    }
  }

  /** ISO 16: the A above middle C, MIDI note 69, has 440 Hz. Tolerance 5 cents. */
  @Test
  void the_built_in_piano_and_bass_are_in_tune() {
    assertEquals(0, centsOff(0, 69, 440.0), 5);
    assertEquals(0, centsOff(4, 57, 220.0), 5);
    assertEquals(0, centsOff(32, 45, 110.0), 5);
  }

  private static double centsOff(int program, int pitch, double hertz) {
    try (StreamSynth synth = builtIn()) {
      synth.send(Messages.program(0, program), 0);
      synth.send(Messages.noteOn(0, pitch, 90), 100_000);
      double[] samples = left(synth, 1.2);
      int from = (int) (0.4 * RATE);
      int length = (int) (0.5 * RATE);
      double best = Double.NEGATIVE_INFINITY;
      double bestLag = 0;
      double[] score = new double[(int) (RATE / hertz * 1.3)];
      for (int lag = (int) (RATE / hertz * 0.7); lag < score.length; lag++) {
        for (int i = from; i < from + length; i++) {
          score[lag] += samples[i] * samples[i + lag];
        }
        if (score[lag] > best) {
          best = score[lag];
          bestLag = lag;
        }
      }
      int peak = (int) bestLag;
      double curve = score[peak - 1] - 2 * score[peak] + score[peak + 1];
      double fine = peak + 0.5 * (score[peak - 1] - score[peak + 1]) / curve;
      return 1200 * Math.log(RATE / fine / hertz) / Math.log(2);
    }
  }

  @Test
  void the_same_messages_give_the_same_samples() {
    double[][] takes = new double[2][];
    for (int i = 0; i < 2; i++) {
      try (StreamSynth synth = builtIn()) {
        synth.send(Messages.program(0, 4), 0);
        synth.send(Messages.noteOn(0, 60, 80), 10_000);
        synth.send(Messages.noteOn(9, 51, 60), 200_000);
        synth.send(Messages.noteOff(0, 60), 700_000);
        takes[i] = left(synth, 1);
      }
    }
    assertArrayEquals(takes[0], takes[1]);
  }

  /**
   * The JDK writes its own bank as a SoundFont 2. In the file its electric piano sits where the
   * piano was, so that we hear whether the file is played.
   */
  @Test
  void a_sound_font_of_the_users_is_played() throws Exception {
    File whole = folder.resolve("whole.sf2").toFile();
    save(MidiSystem.getSynthesizer().getDefaultSoundbank(), whole);
    Soundbank bank = MidiSystem.getSoundbank(whole);
    for (Instrument instrument : bank.getInstruments()) {
      boolean drums = instrument.toString().startsWith("Drumkit");
      if (!drums && instrument.getPatch().getProgram() == 0) {
        bank.getClass()
            .getMethod("removeInstrument", instrument.getClass())
            .invoke(bank, instrument);
      } else if (!drums && instrument.getPatch().getProgram() == 4) {
        instrument
            .getClass()
            .getMethod("setPatch", Patch.class)
            .invoke(instrument, new Patch(0, 0));
      }
    }
    Path file = folder.resolve("swapped.sf2");
    save(bank, file.toFile());
    SoundBank own = SoundBank.read(file);
    assertEquals("swapped.sf2", own.name());
    double[] electric = note(SoundBank.builtIn(), 4);
    assertArrayEquals(electric, note(own, 0), 0.001);
    // What the file lacks is played by the built-in bank.
    assertArrayEquals(note(SoundBank.builtIn(), 11), note(own, 11), 0.001);
  }

  private static void save(Soundbank bank, File file) throws ReflectiveOperationException {
    bank.getClass().getMethod("save", File.class).invoke(bank, file);
  }

  private static double[] note(SoundBank bank, int program) {
    try (StreamSynth synth = StreamSynth.open(bank).orElseThrow()) {
      synth.send(Messages.program(0, program), 0);
      synth.send(Messages.noteOn(0, 60, 80), 10_000);
      return left(synth, 0.5);
    }
  }

  @Test
  void a_file_that_is_no_sound_bank_is_told_in_one_sentence() throws IOException {
    Path notes = Files.writeString(folder.resolve("notes.sf2"), "these are only words, not sounds");
    UserMistake mistake = assertThrows(UserMistake.class, () -> SoundBank.read(notes));
    assertEquals(
        notes + " is not a sound bank; give a SoundFont 2 (.sf2) or a DLS (.dls) file",
        mistake.getMessage());
  }

  @Test
  void a_missing_sound_bank_is_told_in_one_sentence() {
    Path missing = folder.resolve("missing.sf2");
    UserMistake mistake = assertThrows(UserMistake.class, () -> SoundBank.read(missing));
    assertEquals(
        "the SoundFont " + missing + " cannot be read; check its name and place",
        mistake.getMessage());
  }

  @Test
  void a_damaged_sound_bank_is_told_in_one_sentence() throws IOException {
    byte[] bytes = new byte[4000];
    new Random(3).nextBytes(bytes);
    System.arraycopy("RIFF".getBytes(java.nio.charset.StandardCharsets.US_ASCII), 0, bytes, 0, 4);
    System.arraycopy("sfbk".getBytes(java.nio.charset.StandardCharsets.US_ASCII), 0, bytes, 8, 4);
    Path broken = Files.write(folder.resolve("broken.sf2"), bytes);
    UserMistake mistake = assertThrows(UserMistake.class, () -> SoundBank.read(broken));
    assertTrue(mistake.getMessage().startsWith(broken.toString()), mistake.getMessage());
  }
}
