package holdfast.window;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.NoteName;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Names of notes by country: German keeps H for B natural and B for B flat, the Romance languages
 * sing fixed do, re, mi (common practice, no source).
 */
class NoteNamingTest {

  @ParameterizedTest
  @CsvSource({
    "B, B, H, Si",
    "Bb, B♭, B, Si♭",
    "C, C, C, Do",
    "F#, F♯, F♯, Fa♯",
    "Ab, A♭, A♭, La♭",
    "G, G, G, Sol"
  })
  void notes_are_called_as_at_home(String typed, String english, String german, String solfege) {
    NoteName note = NoteName.parse(typed);
    assertEquals(english, NoteNaming.ENGLISH.name(note));
    assertEquals(german, NoteNaming.GERMAN.name(note));
    assertEquals(solfege, NoteNaming.SOLFEGE.name(note));
  }

  @ParameterizedTest
  @CsvSource({
    "Bm7b5, Hm7♭5, Sim7♭5",
    "Bbmaj7, Bmaj7, Si♭maj7",
    "C/Bb, C/B, Do/Si♭",
    "(E7), (E7), (Mi7)",
    "N.C., N.C., N.C."
  })
  void only_root_and_bass_of_a_chord_are_renamed(String typed, String german, String solfege) {
    Harmony chord = Harmony.parse(typed);
    assertEquals(german, NoteNaming.GERMAN.chord(chord));
    assertEquals(solfege, NoteNaming.SOLFEGE.chord(chord));
    assertEquals(chord.display(), NoteNaming.ENGLISH.chord(chord));
  }

  @Test
  void pitches_are_spelled_as_the_key_spells_them() {
    Optional<Key> key = Optional.of(Key.parse("Eb"));
    assertEquals("Mi♭", NoteNaming.SOLFEGE.pitch(63, key));
    assertEquals("B", NoteNaming.GERMAN.pitch(70, key));
  }
}
