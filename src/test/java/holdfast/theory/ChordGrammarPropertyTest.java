package holdfast.theory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class ChordGrammarPropertyTest {

  @Provide
  Arbitrary<String> bases() {
    return Combinators.combine(
            Arbitraries.of("C", "Eb", "F#", "Bb", "G", "A♭"),
            Arbitraries.of(
                "", "m", "7", "m7", "maj7", "9", "13", "11", "m9", "m11", "6", "m6", "6/9", "sus4",
                "7sus4", "9sus4", "+", "+7", "ø", "°7", "°", "m(maj7)", "Δ9", "-Δ7", "sus2"))
        .as((root, suffix) -> root + suffix);
  }

  @Provide
  Arbitrary<List<String>> signs() {
    return Arbitraries.of(
            "b5", "#5", "b9", "#9", "9", "#11", "11", "b13", "13", "no5", "add9", "sus4")
        .list()
        .uniqueElements()
        .ofMaxSize(3);
  }

  @Provide
  Arbitrary<String> symbols() {
    return Combinators.combine(bases(), signs(), Arbitraries.of("", "", "/E", "/Bb", "/F#"))
        .as((base, s, low) -> base + (s.isEmpty() ? "" : "(" + String.join(",", s) + ")") + low);
  }

  @Property(tries = 2000, seed = "20261125")
  void what_is_printed_reads_back_as_the_same_chord(@ForAll("symbols") String symbol) {
    Harmony harmony;
    try {
      harmony = Harmony.parse(symbol);
    } catch (UnknownChordException refused) {
      // Few combinations say nothing that a symbol can write; a refusal is an answer too.
      return;
    }
    assertEquals(harmony, Harmony.parse(harmony.text()));
    assertEquals(harmony, Harmony.parse(harmony.display()));
    ChordKind kind = harmony.chord().orElseThrow().kind();
    assertEquals(
        kind, MusicXmlKind.read(kind.musicXmlKind(), kind.musicXmlChanges()).orElseThrow());
    assertEquals(harmony.chord().orElseThrow(), HarteLabel.parse(HarteLabel.of(harmony)));
  }

  @Property(tries = 500, seed = "20261125")
  void the_order_of_alterations_changes_nothing(
      @ForAll("bases") String base, @ForAll("signs") List<String> signs) {
    List<String> reversed = new ArrayList<>(signs);
    Collections.reverse(reversed);
    assertEquals(read(base, signs), read(base, reversed), base + signs);
  }

  @Property(tries = 500, seed = "20261125")
  void each_alteration_may_have_parentheses_of_its_own(
      @ForAll("bases") String base, @ForAll("signs") List<String> signs) {
    String apart = signs.stream().map(sign -> "(" + sign + ")").collect(Collectors.joining(" "));
    assertEquals(read(base, signs), read(base + apart), base + signs);
  }

  private static String read(String base, List<String> signs) {
    return read(base + (signs.isEmpty() ? "" : "(" + String.join(",", signs) + ")"));
  }

  private static String read(String symbol) {
    try {
      return Harmony.parse(symbol).text();
    } catch (UnknownChordException refused) {
      return "refused";
    }
  }

  @Provide
  Arbitrary<List<Degree>> degrees() {
    return Arbitraries.of(
            "b3", "3", "4", "2", "b5", "5", "#5", "6", "bb7", "b7", "7", "b9", "9", "#9", "11",
            "#11", "b13", "13")
        .map(Degree::parse)
        .list()
        .uniqueElements()
        .ofMinSize(2)
        .ofMaxSize(6)
        .map(
            upper -> {
              List<Degree> chord = new ArrayList<>(upper);
              chord.add(new Degree(1, 0));
              return chord;
            });
  }

  @Property(tries = 2000, seed = "20261125")
  void a_kind_made_of_degrees_has_a_symbol_that_says_just_these(
      @ForAll("degrees") List<Degree> degrees) {
    ChordKind.reading(degrees)
        .ifPresent(
            kind -> {
              assertEquals(
                  degrees.stream().sorted().toList(), kind.degrees().stream().sorted().toList());
              assertEquals("C" + kind.suffix(), Harmony.parse("C" + kind.suffix()).text());
              assertEquals(kind, ChordKind.read(kind.suffix()).orElseThrow());
            });
  }

  @Property(tries = 2000, seed = "20261125")
  void no_text_breaks_the_reader(@ForAll String text) {
    try {
      assertTrue(Harmony.parse(text).text().length() > 0);
    } catch (UnknownChordException refused) {
      assertTrue(refused.nearest().size() <= 3);
    }
  }
}
