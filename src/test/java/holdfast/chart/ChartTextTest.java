package holdfast.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChartTextTest {

  private static final String HEAD = "title: T\n";

  private static Chart chart(String text) {
    return ChartText.parse(text, "test.txt");
  }

  /** Beats and chords of each bar as played: {@code 2 Dm7 2 G7 | 4 Cmaj7}. */
  private static String played(String text) {
    return chart(HEAD + text).form().bars().stream()
        .map(
            bar ->
                bar.chords().stream()
                    .map(c -> Decimal.text(c.lengthBeats()) + " " + c.harmony().text())
                    .collect(Collectors.joining(" ")))
        .collect(Collectors.joining(" | "));
  }

  private static ChartException mistake(String text) {
    return assertThrows(ChartException.class, () -> chart(text));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '>',
      value = {
        "| Dm7 |                       > 4 Dm7",
        "| Dm7 G7 |                    > 2 Dm7 2 G7",
        "| Dm7 G7 C6 A7 |              > 1 Dm7 1 G7 1 C6 1 A7",
        "| Dm7 / / G7 |                > 3 Dm7 1 G7",
        "| Dm7 // G7 |                 > 3 Dm7 1 G7",
        "| Dm7// G7 |                  > 3 Dm7 1 G7",
        "| Dm7*3 G7 |                  > 3 Dm7 1 G7",
        "| Dm7*2.5 G7*1.5 |            > 2.5 Dm7 1.5 G7",
        "| Dm7*2 G7 C6 |               > 2 Dm7 1 G7 1 C6",
        "| Cmaj7 | / / Dm7 / |         > 4 Cmaj7 | 2 Cmaj7 2 Dm7",
        "| Cmaj7 | //// |              > 4 Cmaj7 | 4 Cmaj7",
        "| Cmaj7 | /*0.5 Dm7*3.5 |     > 4 Cmaj7 | 0.5 Cmaj7 3.5 Dm7",
        "| Dm7 G7 | % |                > 2 Dm7 2 G7 | 2 Dm7 2 G7",
        "| Dm7 | G7 | %% |             > 4 Dm7 | 4 G7 | 4 Dm7 | 4 G7",
        "| Dm7 | G7 | %% | % |         > 4 Dm7 | 4 G7 | 4 Dm7 | 4 G7 | 4 G7",
        "| N.C. | Am7 (E7) |           > 4 N.C. | 2 Am7 2 (E7)",
        "| ! Gb7 | !Fm7 |              > 4 Gb7 | 4 Fm7",
        "Dm7 | G7                      > 4 Dm7 | 4 G7",
        "| C7( b9 , #11 ) |            > 4 C7b9#11",
        "| E\u266Dmaj7 | F\u266Fm7 |   > 4 Ebmaj7 | 4 F#m7",
        "| C6/9 | F#/A# |              > 4 C6/9 | 4 F#/A#",
        "|| Dm7 || G7 ||               > 4 Dm7 | 4 G7"
      })
  void beats_are_split_evenly_or_as_slashes_and_counts_say(String bars, String expected) {
    // The first column is typed as musicians write; the split of two chords is common practice.
    assertEquals(expected, played(bars));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '>',
      value = {
        "3/4 > | Dm7 / G7 | Dm7 G7 / | Dm7 | > 2 Dm7 1 G7 | 1 Dm7 2 G7 | 3 Dm7",
        "6/8 > | Dm7 G7 | Dm7 G7 C6 |        > 3 Dm7 3 G7 | 2 Dm7 2 G7 2 C6",
        "5/4 > | Dm7 // G7 / |               > 3 Dm7 2 G7"
      })
  void other_metres_count_in_their_lower_number(String metre, String bars, String expected) {
    assertEquals(expected, played("metre: " + metre + "\n" + bars));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '>',
      value = {
        "|: A7 | B7 :| C7 |                 > A7 B7 A7 B7 C7",
        "| A7 | B7 :| C7 |                  > A7 B7 A7 B7 C7",
        "|: A7 | B7 :|3x C7 |               > A7 B7 A7 B7 A7 B7 C7",
        "|: A7 |1. B7 :|2. C7 | D7 |        > A7 B7 A7 C7 D7",
        "A7 |1. B7 :|2. C7                  > A7 B7 A7 C7",
        "|: A7 |1,2. B7 :|3. C7 |           > A7 B7 A7 B7 A7 C7",
        "|: A7 |1,3. B7 :|2. C7 :|4. D7 |   > A7 B7 A7 C7 A7 B7 A7 D7",
        "|: A7 |1. B7 | E7 :|2. C7 |: D7 :| > A7 B7 E7 A7 C7 D7 D7",
        "| A7 |: B7 :|: C7 :|               > A7 B7 B7 C7 C7",
        "|: A7 | B7 :||: C7 :|              > A7 B7 A7 B7 C7 C7"
      })
  void repeats_and_endings_are_played_out(String bars, String expected) {
    // Common practice, no source.
    assertEquals(
        expected,
        chart(HEAD + bars).form().changes().stream()
            .map(span -> span.harmony().text())
            .collect(Collectors.joining(" ")));
  }

  @Test
  void a_repeat_sign_may_end_one_row_and_count_for_the_next() {
    assertEquals("4 A7 | 4 B7 | 4 B7", played("| A7 |:\n| B7 :|"));
  }

  @Test
  void a_chord_that_goes_on_and_a_bar_of_the_same_are_taken_from_what_was_played_before() {
    assertEquals(
        "4 A7 | 4 B7 | 4 A7 | 4 A7 | 2 A7 2 C7", played("|: A7 |1. B7 :|2. % | / / C7 / |"));
  }

  @Test
  void the_head_may_come_in_any_order_with_other_names_and_capitals() {
    Chart chart =
        chart(
            "-- hello\nTempo: dotted quarter = 50\nMETER: 6/8\nTitle:  A: B  \nKey: F#m\n"
                + "Feel: slow swing\nwritten  for: Eb\nabout: x\npick-up: 1 beat\n\n| E7 | F#m7 |");
    assertEquals("A: B", chart.title());
    assertEquals("F#m", chart.key().orElseThrow().text());
    assertEquals("6/8", chart.metre().text());
    assertEquals(150, chart.tempo(), 1e-9);
    assertEquals("slow swing", chart.feel());
    assertEquals(WrittenFor.E_FLAT, chart.heading().writtenFor());
    assertEquals(List.of("hello"), chart.heading().remarks());
    assertEquals(-1, chart.form().pickup().orElseThrow().startBeat(), 0);
    assertEquals(1, chart.form().bars().size());
  }

  @Test
  void line_ends_tabs_and_byte_order_marks_make_no_difference() {
    String plain = "title: T\nkey: Eb\n\n[A]\n| Ebmaj7 | Gb7 | -- x\n";
    String odd =
        "\uFEFFtitle:\tT\r\nkey: E\u266D\r\r\n\n \t[A]\t\n\t|\tE\u266D\u0394 |G\u266D7|--x";
    assertEquals(chart(plain), chart(odd));
    assertEquals(plain.replace("\n\n", "\n"), plainPrint(chart(odd)));
  }

  private static String plainPrint(Chart chart) {
    return ChartText.print(chart)
        .replace("metre: 4/4\ntempo: 60\nfeel: plain\n", "")
        .replace("\n\n", "\n");
  }

  @Test
  void remarks_sections_rows_and_marks_are_kept() {
    String text =
        """
        -- above all
        title: T
        metre: 4/4
        tempo: 60
        feel: plain

        -- before the first bar

        [A] -- softly
        | Dm7 | ! G7 || -- look out
        --
        -- between

        [Bridge 2]
        |: C6 :|3x A7 | %% |
        """;
    assertEquals(text, ChartText.print(chart(text)));
  }

  @Test
  void the_charts_in_the_handbook_read_and_print_as_they_stand() throws IOException {
    String handbook = Files.readString(Path.of("backing/README.md"));
    Matcher blocks = Pattern.compile("(?s)```\\n(.*?)```").matcher(handbook);
    int charts = 0;
    while (blocks.find()) {
      Chart chart = chart(blocks.group(1));
      assertEquals(chart, chart(ChartText.print(chart)));
      charts++;
    }
    assertEquals(2, charts);
  }

  @Test
  void an_unknown_chord_names_chart_place_bar_symbol_and_what_is_near() {
    ChartException e = mistake(HEAD + "| Dm7 | G7 |\n| Cmaj7 | Ebmaj77 |");
    assertEquals("test.txt", e.source());
    assertEquals(3, e.line());
    assertEquals(11, e.column());
    assertTrue(
        e.getMessage()
            .startsWith("test.txt, line 3, column 11: bar 4: “Ebmaj77” is no chord symbol I know"),
        e.getMessage());
    assertTrue(e.mend().contains("Ebmaj7"), e.mend());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '>',
      quoteCharacter = '\0',
      value = {
        "key: C\\n| C |                   > 0 > it has no title",
        "title: T                          > 0 > there is no bar to play",
        "title: T\\n| Dm7 G7 C6 |         > 2 > bar 1: 3 chords do not share 4 beats evenly",
        "title: T\\n| Dm7 / G7 |          > 2 > bar 1: its chords last 3 beats where the bar has 4",
        "title: T\\n| C |\\n| D | E / |   > 3 > bar 3: its chords last 2 beats where the bar has 4",
        "title: T\\n| C | | D |           > 2 > bar 2 is empty",
        "title: T\\n| % |                 > 2 > bar 1: no whole bar comes before it",
        "title: T\\n| C | %% |            > 2 > bar 2: no two whole bars come before it",
        "title: T\\n| / / C / |           > 2 > bar 1: no chord comes before it that could go on",
        "title: T\\n|: C | D |            > 2 > bar 1: a repeat opens here and never closes",
        "title: T\\n|: C |: D :|          > 2 > bar 2: a repeat opens inside another",
        "title: T\\n| C |1. D |           > 2 > bar 2: there is a first ending and no second",
        "title: T\\n| C |1. D :|2. E :|   > 2 > bar 3: the last ending goes back once more",
        "title: T\\n| C |1. D |2. E |     > 2 > bar 2: this ending leads on into the next one",
        "title: T\\n| C |1. D :|3. E |    > 2 > bar 3: no ending is for each pass up to 3",
        "title: T\\n| C |1. D :|1. E |    > 2 > bar 3: two endings are for pass 1",
        "title: T\\n|1. D :|2. E |        > 2 > bar 1: an ending stands where nothing comes before",
        "title: T\\n| C |: % | D :|       > 2 > bar 2: it looks back across the start of a repeat",
        "title: T\\n| C |: D | %% :|      > 2 > bar 3: it looks back across the start of a repeat",
        "title: T\\n| C |: / / D / :|     > 2 > bar 2: it looks back across the start of a repeat",
        "title: T\\n| C :|40x             > 2 > a repeat cannot be played 40 times",
        "title: T\\n| C |2,1. D |         > 2 > “2,1.” does not number an ending",
        "title: T\\n| C |:                > 2 > no bar follows this sign",
        "title: T\\n:| C |                > 2 > no bar stands before this repeat sign",
        "title: T\\n| C ||| D |           > 2 > “|||” is no bar line",
        "title: T\\n| C ! |               > 2 > the mark ! stands inside a bar",
        "title: T\\n| C % |               > 2 > bar 1: “%” repeats whole bars",
        "title: T\\n| C(b9 |              > 2 > bar 1: the parentheses of “C(b9” do not match",
        "title: T\\n| C*4 D |             > 2 > bar 1: the counts leave no beat",
        "title: T\\n| C*0 D |             > 2 > bar 1: “C*0” lasts no beat",
        "title: T\\n| C*2 / |             > 2 > bar 1: slashes and counts are mixed",
        "title: T\\n[A\\n| C |            > 2 > a section's name is not closed",
        "title: T\\n[]\\n| C |            > 2 > a section has no name",
        "title: T\\n[A] ||                > 2 > there is no bar on this line",
        "title: T\\ncolour: red\\n| C |   > 2 > a chart's head has no “colour”",
        "title: T\\ntitle: U\\n| C |      > 2 > “title:” stands twice, first in line 1",
        "title: T\\ntempo:\\n| C |        > 2 > “tempo:” says nothing",
        "title: T\\n| C |\\ntempo: 80     > 3 > “tempo:” belongs to the head",
        "title: T\\ntempo: quick\\n| C |  > 2 > “quick” is no tempo",
        "title: T\\ntempo: 999\\n| C |    > 2 > a tempo of 999 beats a minute is out of reach",
        "title: T\\nmetre: 4\\n| C |      > 2 > “4” is no metre",
        "title: T\\nmetre: 4/5\\n| C |    > 2 > a metre counts in",
        "title: T\\nmetre: 0/4\\n| C |    > 2 > a metre has 1 to 32 beats",
        "title: T\\nkey: Hugo\\n| C |     > 2 > “Hugo” is no key I know",
        "title: T\\npickup: 4\\n| C | D | > 2 > “4” is no pick-up",
        "title: T\\npickup: 1\\n| C |     > 3 > bar 0: no bar follows the pick-up",
        "title: T\\npickup: 1\\n| % | C | > 3 > bar 0: the pick-up bar has nothing before it",
        "title: T\\npickup: 1\\n|: C | C :| > 3 > bar 0: the pick-up bar is played only once",
        "title: T\\nwritten for: me\\n| C | > 2 > “me” is no instrument's pitch"
      })
  void a_mistake_is_told_with_its_place_and_its_mend(String text, int line, String wrong) {
    ChartException e = mistake(text.replace("\\n", "\n"));
    assertEquals(line, e.line(), e.getMessage());
    assertTrue(e.wrong().startsWith(wrong), e.getMessage());
    assertTrue(!e.mend().isBlank() && !e.getMessage().contains("\n"), e.getMessage());
  }

  @Test
  void very_long_charts_are_read_and_endless_ones_refused() {
    String row = "| Dm7 G7 | Cmaj7 | % | %% |\n";
    assertEquals(4000, chart(HEAD + row.repeat(800)).form().bars().size());
    assertTrue(
        mistake(HEAD + row.repeat(900)).wrong().contains("more than 4096 bars"),
        "900 rows of 5 bars are too many");
    assertTrue(mistake(HEAD + "|: C :|16x C :|16x\n".repeat(400)).wrong().contains("4096"));
    assertTrue(mistake("x".repeat(2_000_000)).wrong().contains("too long"));
  }

  @Test
  void bars_are_marked_and_unmarked_by_their_number_on_the_page() {
    Chart chart = chart(HEAD + "pickup: 1\n| G7 | C6 | Dm7 | %% | A7 |");
    assertEquals(java.util.Set.of(5), chart.marked(5, true).unexpectedBars());
    assertEquals(chart, chart.marked(5, true).marked(5, false));
    assertTrue(ChartText.print(chart.marked(3, true)).contains("| ! %% |"));
    assertThrows(IllegalArgumentException.class, () -> chart.marked(4, true));
    assertThrows(IllegalArgumentException.class, () -> chart.marked(6, true));
  }
}
