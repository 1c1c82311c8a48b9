package holdfast.report;

import static j2html.TagCreator.caption;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.text;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.tr;

import holdfast.harmony.Fit;
import holdfast.motif.Material;
import holdfast.session.BeatTiming;
import holdfast.session.Counts;
import holdfast.session.Intonation;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.theory.ChordFamily;
import holdfast.theory.ChordSymbol;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What was counted: facts beside each other, none of them a grade. */
final class CountsSection {

  /** Longer tables stand beside each other. */
  private static final int MOST_CHORUSES = 20;

  private CountsSection() {}

  static DomContent of(JudgedTake take) {
    Counts counts = take.counts();
    if (counts.phrases() == 0) {
      return text("");
    }
    return section(
            h2("Counts"),
            table(
                    caption("Phrases after the idea: " + counts.phrases()),
                    tbody(
                        row("restated", Integer.toString(counts.restated())),
                        row("varied", Integer.toString(counts.varied())),
                        row("new", counts.fresh() + materials(take)),
                        row("longest run that carried it", Integer.toString(counts.longestRun()))))
                .withClass("counts"),
            choruses(take),
            kinds(take),
            each(facts(take), sentence -> p(sentence)))
        .withClass("figures");
  }

  private static DomContent row(String what, String value) {
    return tr(th(what).attr("scope", "row"), td(value));
  }

  /** What new phrases were made of: {@code : 1 a scale run, 2 an arpeggio}. */
  private static String materials(JudgedTake take) {
    Map<Material, Integer> made = new EnumMap<>(Material.class);
    take.phrases().stream()
        .filter(phrase -> !phrase.carries() && !phrase.statesTheIdea())
        .forEach(phrase -> made.merge(phrase.verdict().material(), 1, Integer::sum));
    if (made.isEmpty()) {
      return "";
    }
    return made.entrySet().stream()
        .map(e -> e.getKey().words() + (e.getValue() > 1 ? " × " + e.getValue() : ""))
        .collect(Collectors.joining(", ", " (", ")"));
  }

  private static DomContent choruses(JudgedTake take) {
    List<Counts.Chorus> all = take.counts().choruses();
    List<DomContent> tables = new ArrayList<>();
    for (int from = 0; from < all.size(); from += MOST_CHORUSES) {
      List<Counts.Chorus> some = all.subList(from, Math.min(all.size(), from + MOST_CHORUSES));
      tables.add(choruses(take, some, from == 0 ? "Chorus by chorus" : "and on"));
    }
    return each(tables.stream());
  }

  private static DomContent choruses(JudgedTake take, List<Counts.Chorus> some, String title) {
    Optional<Intonation> tuned = Intonation.of(take);
    return table(
            caption(title),
            thead(
                tr(
                    th("chorus").attr("scope", "col"),
                    th("carried").attr("scope", "col"),
                    th("in the chords").attr("scope", "col"),
                    each(tuned.stream().toList(), t -> th("tuning").attr("scope", "col")))),
            tbody(
                each(
                    some,
                    c ->
                        tr(
                            th(Integer.toString(c.number())).attr("scope", "row"),
                            td(c.carried() + " of " + c.phrases()),
                            td(c.fit().map(Fit::word).map(w -> w.text()).orElse("no chord")),
                            each(tuned.stream().toList(), t -> td(tuning(t, c.number())))))))
        .withClass("counts");
  }

  private static String tuning(Intonation tuned, int chorus) {
    return tuned.choruses().stream()
        .filter(c -> c.chorus() == chorus)
        .findFirst()
        .map(c -> String.format(Locale.ROOT, "%+.0f cents", c.cents()).replace('-', '−'))
        .orElse("too few notes");
  }

  private static DomContent kinds(JudgedTake take) {
    Map<String, int[]> byKind = new TreeMap<>();
    for (JudgedPhrase phrase : take.phrases()) {
      if (!phrase.statesTheIdea()) {
        int[] counted = byKind.computeIfAbsent(kind(phrase), k -> new int[2]);
        counted[0]++;
        counted[1] += phrase.carries() ? 1 : 0;
      }
    }
    return table(
            caption("Over which kind of chord"),
            thead(tr(th("chord").attr("scope", "col"), th("carried").attr("scope", "col"))),
            tbody(
                each(
                    List.copyOf(byKind.entrySet()),
                    e -> row(e.getKey(), e.getValue()[1] + " of " + e.getValue()[0]))))
        .withClass("counts");
  }

  static String kind(JudgedPhrase phrase) {
    Optional<ChordSymbol> chord = phrase.mainChord().harmony().chord();
    if (chord.isEmpty()) {
      return "no chord";
    }
    return switch (ChordFamily.of(chord.get().kind())) {
      case MAJOR, MAJOR_SIXTH, MAJOR_SEVENTH, LYDIAN_MAJOR, AUGMENTED_MAJOR -> "major";
      case MINOR, MINOR_SIXTH, MINOR_SEVENTH, MINOR_MAJOR -> "minor";
      case HALF_DIMINISHED, DIMINISHED, DIMINISHED_SEVENTH -> "diminished";
      case AUGMENTED -> "augmented";
      case DOMINANT,
          LYDIAN_DOMINANT,
          FLAT_NINTH_DOMINANT,
          FLAT_THIRTEENTH_DOMINANT,
          OCTATONIC_DOMINANT,
          AUGMENTED_DOMINANT,
          ALTERED_DOMINANT ->
          "dominant seventh";
      case SUSPENDED, SUSPENDED_SECOND -> "suspended";
      case POWER -> "open fifth";
    };
  }

  private static List<String> facts(JudgedTake take) {
    List<String> facts = new ArrayList<>();
    Foreseen.of(take).ifPresent(foreseen -> facts.addAll(foreseen.sentences(take.choruses())));
    Intonation.of(take).ifPresent(tuned -> facts.addAll(IntonationSentences.of(tuned)));
    BeatTiming.of(take)
        .ifPresent(
            timing ->
                facts.add(
                    String.format(
                        Locale.ROOT,
                        "In the middle your notes came %s the beat; half of them lay between %s"
                            + " and %s it (%d notes near beats). Early or late is a fact here, no"
                            + " fault.",
                        off(timing.middleMillis()),
                        off(timing.lowerMillis()),
                        off(timing.upperMillis()),
                        timing.notes())));
    return facts;
  }

  private static String off(double millis) {
    long size = Math.round(Math.abs(millis));
    return size + " ms " + (millis < 0 ? "before" : "after");
  }
}
