package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ChordPaletteTest {

  private static ChordPalette palette(String chord, String key, String next) {
    return ChordPalette.of(
        Harmony.parse(chord),
        key.isEmpty() ? Optional.empty() : Optional.of(Key.parse(key)),
        next.isEmpty() ? Optional.empty() : Optional.of(Harmony.parse(next)));
  }

  static Stream<Map<String, String>> taughtScales() {
    return Reference.rows("chord-scales.csv", ';').stream();
  }

  @Test
  void the_table_of_taught_scales_has_its_32_rows() {
    assertEquals(32, taughtScales().count());
  }

  @ParameterizedTest
  @MethodSource("taughtScales")
  void a_chord_where_it_stands_takes_the_scale_that_is_taught_for_it(Map<String, String> row) {
    for (String symbol : Reference.words(row.get("chords"))) {
      ChordPalette palette = palette(symbol, row.get("key"), row.get("next"));
      PitchClassSet taught = Reference.pitchClasses(row.get("steps")).transpose(palette.root());
      assertEquals(taught, palette.scale(), symbol + ": " + palette.context());
    }
  }

  @ParameterizedTest
  @MethodSource("taughtScales")
  void the_taught_tensions_are_tensions_or_in_the_chord(Map<String, String> row) {
    for (String symbol : Reference.words(row.get("chords"))) {
      ChordPalette palette = palette(symbol, row.get("key"), row.get("next"));
      for (String tension : Reference.words(row.get("tensions"))) {
        int pitch = palette.root() + Degree.parse(tension).semitones();
        ToneClass heard = palette.toneClass(pitch);
        assertTrue(
            heard == ToneClass.TENSION || heard == ToneClass.CHORD_TONE,
            tension + " over " + symbol + " is " + heard);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("taughtScales")
  void a_note_that_is_taught_not_to_be_held_is_so_or_disputed(Map<String, String> row) {
    for (String symbol : Reference.words(row.get("chords"))) {
      ChordPalette palette = palette(symbol, row.get("key"), row.get("next"));
      for (String handle : Reference.words(row.get("handle"))) {
        int pitch = palette.root() + Degree.parse(handle).semitones();
        boolean disputed = palette.disputed().contains(pitch);
        assertTrue(palette.betterNotHeld(pitch) || disputed, handle + " over " + symbol);
        assertTrue(!disputed || !palette.disagreement().isEmpty(), "the palette says why");
      }
    }
  }

  @ParameterizedTest
  @MethodSource("taughtScales")
  void the_guide_tones_are_those_that_are_taught(Map<String, String> row) {
    for (String symbol : Reference.words(row.get("chords"))) {
      ChordPalette palette = palette(symbol, row.get("key"), row.get("next"));
      for (String guide : Reference.words(row.get("guide"))) {
        int pitch = palette.root() + Degree.parse(guide).semitones();
        assertTrue(palette.guideTones().contains(pitch), guide + " over " + symbol);
      }
    }
  }

  private static Map<ToneClass, Double> shares(String which) {
    Map<ToneClass, Double> notes = new EnumMap<>(ToneClass.class);
    for (Map<String, String> row : Reference.rows("solo-notes-over-chords.csv", ',')) {
      if (row.get("which").equals(which)) {
        ChordPalette palette = ChordPalette.of(Harmony.parse(row.get("chord")));
        for (int step = 0; step < 12; step++) {
          double count =
              Double.parseDouble(row.get("notes")) * Double.parseDouble(row.get("iv" + step));
          notes.merge(palette.toneClass(step), count, Double::sum);
        }
      }
    }
    double total = notes.values().stream().mapToDouble(Double::doubleValue).sum();
    notes.replaceAll((heard, count) -> count / total);
    return notes;
  }

  @Test
  void experts_play_the_classes_of_notes_in_the_shares_that_were_measured() {
    Map<ToneClass, Double> shares = shares("all");
    assertEquals(0.494, shares.get(ToneClass.CHORD_TONE), 0.005);
    assertEquals(0.301, shares.get(ToneClass.TENSION), 0.04);
    assertEquals(0.067, shares.get(ToneClass.SCALE_TONE), 0.02);
    assertEquals(0.138, shares.get(ToneClass.OUTSIDE), 0.05);
  }

  @Test
  void experts_hold_chord_tones_more_and_outside_notes_less_than_they_play_them() {
    Map<ToneClass, Double> all = shares("all");
    Map<ToneClass, Double> held = shares("long");
    assertTrue(held.get(ToneClass.CHORD_TONE) > 1.1 * all.get(ToneClass.CHORD_TONE));
    assertTrue(held.get(ToneClass.SCALE_TONE) < 0.9 * all.get(ToneClass.SCALE_TONE));
    assertTrue(held.get(ToneClass.OUTSIDE) < 0.6 * all.get(ToneClass.OUTSIDE));
  }

  @Test
  void where_sources_disagree_both_readings_are_allowed_and_the_palette_says_so() {
    ChordPalette ii = palette("Dm7", "C", "G7");
    int thirteenth = SpelledPitch.parse("B4").midi();
    assertEquals(ToneClass.TENSION, ii.toneClass(thirteenth));
    assertTrue(ii.disputed().contains(thirteenth));
    assertFalse(ii.betterNotHeld(thirteenth));
    assertTrue(ii.disagreement().contains("13"));

    ChordPalette vamp = palette("Dm7", "Dm (Dorian)", "");
    assertFalse(vamp.disputed().contains(thirteenth));
  }

  @Test
  void the_key_decides_between_phrygian_and_dorian() {
    assertEquals("Phrygian", palette("Em7", "C", "").scales().get(0).name());
    assertEquals("Dorian", palette("Em7", "D", "").scales().get(0).name());
    assertEquals("Dorian", palette("Em7", "", "").scales().get(0).name());
  }

  @Test
  void the_next_chord_tells_a_resolving_dominant_from_a_substitute() {
    assertEquals("V7 to I", palette("G7", "C", "Cmaj7").context());
    assertEquals("Tritone substitute", palette("Db7", "C", "Cmaj7").context());
    assertEquals("Tritone substitute", palette("Db7", "", "Cmaj7").context());
    assertEquals("V7 to a minor chord", palette("G7", "", "Cm7").context());
  }

  @Test
  void a_chord_that_goes_on_is_not_its_own_next_chord() {
    assertEquals(palette("G7", "C", ""), palette("G7", "C", "G7"));
  }

  @Test
  void the_same_place_in_another_key_has_the_same_palette_higher() {
    for (Map<String, String> row : taughtScales().toList()) {
      for (String symbol : Reference.words(row.get("chords"))) {
        for (NoteName tonic : List.of(NoteName.parse("Eb"), NoteName.parse("F#"))) {
          Interval way = Interval.up(NoteName.parse("C"), tonic);
          Harmony chord = Harmony.parse(symbol);
          Optional<Key> key =
              row.get("key").isEmpty() ? Optional.empty() : Optional.of(Key.parse(row.get("key")));
          Optional<Harmony> next =
              row.get("next").isEmpty()
                  ? Optional.empty()
                  : Optional.of(Harmony.parse(row.get("next")));
          ChordPalette here = ChordPalette.of(chord, key, next);
          ChordPalette there =
              ChordPalette.of(
                  chord.transpose(way),
                  key.map(k -> k.transpose(way)),
                  next.map(n -> n.transpose(way)));
          for (int pitch = 48; pitch < 60; pitch++) {
            assertEquals(here.toneClass(pitch), there.toneClass(pitch + way.semitones()));
            assertEquals(here.betterNotHeld(pitch), there.betterNotHeld(pitch + way.semitones()));
          }
        }
      }
    }
  }

  @Test
  void every_known_kind_has_a_palette_that_holds_its_chord() {
    for (ChordKind kind : ChordKind.known()) {
      ChordPalette palette =
          ChordPalette.of(new ChordSymbol(NoteName.parse("C"), kind, Optional.empty()));
      assertEquals(PitchClassSet.EMPTY, kind.soundingSteps().minus(palette.scale()), kind.suffix());
      kind.soundingSteps().stream()
          .forEach(
              step ->
                  assertTrue(
                      palette.toneClass(step) == ToneClass.CHORD_TONE
                          || palette.toneClass(step) == ToneClass.TENSION,
                      kind.suffix() + " " + step));
    }
  }

  @Test
  void the_bass_after_a_slash_is_a_chord_tone() {
    assertEquals(
        ToneClass.CHORD_TONE, palette("Dm7/G", "C", "").toneClass(SpelledPitch.parse("G3").midi()));
  }

  @Test
  void without_a_chord_no_note_is_outside() {
    ChordPalette free = ChordPalette.of(NoChord.SILENT);
    for (int pitch = 0; pitch < 128; pitch++) {
      assertEquals(ToneClass.TENSION, free.toneClassWhenHeld(pitch));
    }
  }

  @Test
  void at_an_optional_chord_a_note_counts_as_where_it_fits_better() {
    ChordPalette either = palette("Am7", "C", "").or(palette("(E7)", "C", "Am7"));
    assertEquals(ToneClass.CHORD_TONE, either.toneClass(SpelledPitch.parse("G#4").midi()));
    assertEquals(ToneClass.CHORD_TONE, either.toneClass(SpelledPitch.parse("G4").midi()));
    assertEquals(ToneClass.CHORD_TONE, either.toneClass(SpelledPitch.parse("E4").midi()));
  }
}
