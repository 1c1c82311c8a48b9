package holdfast.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.listening.audio.SoundFile;

/** WAV, MP3, Ogg Vorbis, FLAC and M4A. */
class SoundFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void any_sound_file(byte[] bytes) {
    Hostile.readFile(bytes, ".wav", file -> SoundFile.read(file).atEarRate());
  }
}
