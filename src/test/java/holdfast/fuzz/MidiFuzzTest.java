package holdfast.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import holdfast.listening.midi.LineChoice;
import holdfast.listening.midi.MidiTakeFile;
import holdfast.listening.midi.RecordedTake;
import java.util.Optional;
import java.util.OptionalInt;

/** Standard MIDI Files. */
class MidiFuzzTest {

  @FuzzTest(maxDuration = "10m")
  void any_midi_file(byte[] bytes) {
    Hostile.read(
        bytes,
        () -> {
          RecordedTake take = MidiTakeFile.read("x.mid", bytes);
          return LineChoice.of(take, Optional.empty(), OptionalInt.empty()).line();
        });
  }
}
