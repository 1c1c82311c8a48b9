package holdfast.listening.midi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.listening.PlayedNote;
import holdfast.time.Metre;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Holds the reader against the examples that the standard itself prints. */
class MidiTakeFileTest {

  @ParameterizedTest
  @ValueSource(strings = {"format0", "format1"})
  void the_standards_own_examples_are_read_as_the_standard_explains_them(String example) {
    RecordedTake take = MidiTakeFile.read("example.mid", SmfReference.example(example));

    assertEquals(List.of(), take.remarks());
    assertEquals(Optional.of(Metre.COMMON), take.openingMetre());
    assertTrue(take.tempoIsWritten());
    assertEquals(120, take.tempo().openingTempo(), 1e-9);
    assertEquals(List.of(1, 2, 3), take.parts().stream().map(TakePart::channel).toList());
    assertEquals(
        List.of(OptionalInt.of(5), OptionalInt.of(46), OptionalInt.of(70)),
        take.parts().stream().map(TakePart::program).toList());
    // 96 ticks a quarter at 120: one tick is 1/192 s; every note ends at tick 384.
    assertNotes(List.of(PlayedNote.key(1.0, 1.0, 76, 0x20)), take.parts().get(0).notes());
    assertNotes(List.of(PlayedNote.key(0.5, 1.5, 67, 0x40)), take.parts().get(1).notes());
    assertNotes(
        List.of(PlayedNote.key(0, 2, 48, 0x60), PlayedNote.key(0, 2, 60, 0x60)),
        take.parts().get(2).notes());
  }

  private static void assertNotes(List<PlayedNote> expected, List<PlayedNote> actual) {
    assertEquals(expected.size(), actual.size(), () -> "notes: " + actual);
    for (int i = 0; i < expected.size(); i++) {
      PlayedNote e = expected.get(i);
      PlayedNote a = actual.get(i);
      assertEquals(e.pitch(), a.pitch());
      assertEquals(e.onsetSeconds(), a.onsetSeconds(), 1e-9);
      assertEquals(e.durationSeconds(), a.durationSeconds(), 1e-9);
      assertEquals(e.loudness(), a.loudness(), 1e-9);
    }
  }
}
