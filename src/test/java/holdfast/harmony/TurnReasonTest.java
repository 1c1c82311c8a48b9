package holdfast.harmony;

import static org.junit.jupiter.api.Assertions.assertEquals;

import holdfast.chart.ChordSpan;
import holdfast.theory.ChordSymbol;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Why a chord is unexpected, in the words of harmony books (common practice, no source). */
class TurnReasonTest {

  private static String reason(String key, String before, String chord, String next) {
    Key written = Key.parse(key);
    return TurnReason.of(
        written,
        ChordSymbol.parse(before),
        ChordSymbol.parse(chord),
        Optional.ofNullable(next).map(ChordSymbol::parse),
        KeyOfTheMoment.of(written.tonic().pitchClass(), written.mode().hasMinorThird()));
  }

  @ParameterizedTest
  @CsvSource({
    "C, Cmaj7, B7, Em7, leaves the key: leans towards Em7",
    "C, Dm7, Db7, Cmaj7, leaves the key: slides into Cmaj7 from a half step above",
    "C, Cmaj7, F#dim7, G7, leaves the key: a diminished chord that slips in before G7",
    "C, Cmaj7, F#m7b5, , leaves the key: a diminished chord that slips in before the next",
    "C, Cmaj7, Cm7, F7, home turns minor",
    "Am, Am7, Amaj7, Dm7, home turns major",
    "C, Cmaj7, Ebmaj7, Dm7, leaves the key: borrowed from the minor",
    "Am, Am7, C#m7, Dm7, leaves the key: borrowed from the major",
    "C, Cmaj7, D7, Am7, leaves the key: brings F♯",
    "C, Cmaj7, E6, Am7, leaves the key: brings C♯ and G♯",
    "Am, Dm7, Bbmaj7, Am7, leaves the key: the chord a half step above home",
    "C, F7, Em7, Am7, rarely follows F7"
  })
  void it_is_said_what_is_heard(String key, String before, String chord, String next, String said) {
    assertEquals(said, reason(key, before, chord, next));
  }

  @ParameterizedTest
  @CsvSource({
    "Cmaj7, Emaj7, a major third higher",
    "Cmaj7, F#maj7, a tritone away",
    "Cmaj7, Dmaj7, a whole step higher",
    "Cmaj7, Amaj7, a minor third lower",
    "Cmaj7, Bmaj7, a half step lower",
    "Cmaj7, Dbmaj7, a half step higher",
    "Emaj7, Bmaj7, a fourth lower",
    "Emaj7, Amaj7, a fourth higher",
    "F#maj7, Emaj7, a whole step lower",
    "F#maj7, Amaj7, a minor third higher",
    "Amaj7, Dbmaj7, a major third higher",
    "Dbmaj7, Amaj7, a major third lower"
  })
  void the_same_kind_of_chord_is_told_by_its_distance(String before, String chord, String said) {
    assertEquals(
        "leaves the key: the same kind of chord, " + said, reason("C", before, chord, "Dm7"));
  }

  private static List<ChordSpan> form(String... chords) {
    List<ChordSpan> spans = new ArrayList<>();
    for (int i = 0; i < chords.length; i++) {
      spans.add(new ChordSpan(4.0 * i, 4, Harmony.parse(chords[i]), i + 1));
    }
    return spans;
  }

  /** Lerdahl's Tonal Pitch Space: distances of the triads of a key from its tonic chord. */
  @ParameterizedTest
  @CsvSource({"F, 5", "G, 5", "Am, 7", "Em, 7", "Dm, 8", "Bdim, 8"})
  void a_chord_of_the_key_lies_as_far_from_home_as_tonal_pitch_space_has_it(
      String chord, int distance) {
    assertEquals(
        distance, TurnsAhead.of(form("C", chord), Optional.of(Key.parse("C"))).get(1).distance());
  }

  @Test
  void in_a_minor_key_home_is_its_minor_chord() {
    // By the same rule from A minor: its relative C lies 7 away.
    List<Turn> turns = TurnsAhead.of(form("Am", "C"), Optional.of(Key.parse("Am")));
    assertEquals(0, turns.get(0).distance());
    assertEquals(7, turns.get(1).distance());
  }

  @Test
  void each_bar_has_the_reason_of_its_first_surprise() {
    assertEquals(
        "{3=leaves the key: borrowed from the minor}",
        TurnsAhead.reasons(form("Cmaj7", "Am7", "Abmaj7", "G7"), Optional.of(Key.parse("C")))
            .toString());
  }

  @Test
  void a_chord_that_goes_on_over_a_bar_line_leads_to_the_next_other_one() {
    assertEquals(
        "{3=leaves the key: leans towards Em7}",
        TurnsAhead.reasons(
                form("Cmaj7", "Cmaj7", "B7", "B7", "Em7", "Dm7", "G7", "Cmaj7"),
                Optional.of(Key.parse("C")))
            .toString());
  }

  private static List<PitchClassSet> notes(String... chords) {
    List<PitchClassSet> notes = new ArrayList<>();
    for (String chord : chords) {
      notes.add(Harmony.parse(chord).standardPitchClasses());
    }
    return notes;
  }

  private static KeyOfTheMoment.Place keyAfter(String... chords) {
    List<KeyOfTheMoment.Place> along =
        KeyOfTheMoment.along(notes(chords), KeyOfTheMoment.of(0, false));
    return along.get(along.size() - 1);
  }

  @Test
  void a_chord_that_is_borrowed_for_a_bar_leaves_the_ear_at_home_and_a_bridge_does_not() {
    KeyOfTheMoment.Place home = KeyOfTheMoment.of(0, false);
    assertEquals(home, keyAfter("C"));
    assertEquals(home, keyAfter("C", "Fm"));
    assertEquals(home, keyAfter("C", "Am", "Dm", "G7", "Abmaj7", "G7", "C"));
    KeyOfTheMoment.Place bridge = keyAfter("C", "Abmaj7", "Fm7", "Bbm7", "Eb7", "Abmaj7", "Dbmaj7");
    // A flat major or its relative minor: the ear has left home and nothing lies outside.
    assertEquals(0, bridge.outside(notes("Dbmaj7").get(0)));
    assertEquals(2, home.outside(notes("Dbmaj7").get(0)));
  }
}
