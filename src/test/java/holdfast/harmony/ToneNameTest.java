package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names of notes over chords. Common practice, no source. */
class ToneNameTest {

  @ParameterizedTest
  @CsvSource({
    "64, Dbm7, C, E",
    "64, Dbm7, Ab, F♭",
    "68, E7, F, G♯",
    "68, Fm7, Eb, A♭",
    "70, C7, C, B♭",
    "66, D7, C, F♯",
    "66, Ebm7, Db, G♭",
    "61, A7, G, C♯",
    "61, N.C., F, D♭"
  })
  void a_note_of_the_key_keeps_its_name_and_another_has_the_one_that_its_chord_gives(
      int pitch, String chord, String key, String name) {
    assertEquals(name, ToneName.shown(pitch, Harmony.parse(chord), Optional.of(Key.parse(key))));
  }

  @ParameterizedTest
  @CsvSource({
    "60, C7, root", "64, C7, third", "70, C7, seventh", "61, C7, flat ninth",
    "63, C7, sharp ninth", "69, C7, thirteenth", "66, C7, sharp eleventh", "59, C7, major seventh",
    "55, C/G, fifth", "58, C/Bb, bass", "62, C7, ninth", "68, C7, flat thirteenth"
  })
  void its_place_is_counted_from_the_root(int pitch, String chord, String place) {
    assertEquals(place, ToneName.place(pitch, Harmony.parse(chord)));
  }
}
