package holdfast.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import holdfast.harmony.Fit;
import holdfast.harmony.HeardNote;
import holdfast.melody.Note;
import holdfast.motif.Evidence;
import holdfast.motif.Family;
import holdfast.motif.Motif;
import holdfast.motif.Verdict;
import holdfast.session.Counts;
import holdfast.session.Intonation;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import java.util.Optional;

/**
 * A judged take for other programs; {@code judgement.schema.json} beside this class says what
 * stands where. Numbers are rounded to thousandths, which is finer than anyone plays.
 */
public final class JudgementJson {

  private static final ObjectMapper MAPPER =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private JudgementJson() {}

  /** The whole take as JSON text. */
  public static String of(JudgedTake take) {
    return tree(take).toPrettyString();
  }

  /** The whole take as a tree. */
  public static ObjectNode tree(JudgedTake take) {
    Setting setting = take.setting();
    ObjectNode root = MAPPER.createObjectNode();
    root.put("chart", setting.chart().title());
    root.put("key", setting.changes().key().map(Key::text).orElse(""));
    root.put("metre", setting.metre().text());
    root.put("tempo", thousandths(setting.beats().openingTempo()));
    if (take.idea().isPresent()) {
      idea(root.putObject("idea"), take.idea().get());
    } else {
      root.putNull("idea");
    }
    ArrayNode phrases = root.putArray("phrases");
    take.phrases().forEach(phrase -> phrase(phrases.addObject(), phrase));
    ObjectNode summary = root.putObject("summary");
    summary(summary, take.counts());
    fit(
        summary,
        Fit.of(take.phrases().stream().flatMap(p -> p.harmony().notes().stream()).toList()));
    Intonation.of(take).ifPresent(tuned -> intonation(root.putObject("intonation"), tuned));
    return root;
  }

  private static void intonation(ObjectNode node, Intonation tuned) {
    node.put("cents", tenths(tuned.cents()));
    node.put("driftCents", tenths(tuned.driftCents()));
    ArrayNode choruses = node.putArray("choruses");
    for (Intonation.OfChorus chorus : tuned.choruses()) {
      choruses.addObject().put("chorus", chorus.chorus()).put("cents", tenths(chorus.cents()));
    }
  }

  private static double tenths(double value) {
    return Math.rint(value * 10) / 10;
  }

  private static void idea(ObjectNode node, Motif idea) {
    ArrayNode notes = node.putArray("notes");
    idea.notes().forEach(note -> note(notes.addObject(), note));
    node.put("chord", idea.chord().map(Harmony::text).orElse(null));
    node.put("rhythm", RhythmWords.of(idea.notes()));
  }

  private static void phrase(ObjectNode node, JudgedPhrase phrase) {
    Verdict verdict = phrase.verdict();
    node.put("index", phrase.index());
    if (phrase.statesTheIdea()) {
      node.put("statesTheIdea", true);
    }
    node.put("startBeat", thousandths(phrase.startBeat()));
    node.put("endBeat", thousandths(phrase.endBeat()));
    node.put("startSeconds", thousandths(phrase.startSeconds()));
    node.put("chorus", phrase.place().chorus());
    node.put("bar", phrase.place().bar());
    ArrayNode chords = node.putArray("chords");
    phrase.chords().forEach(span -> chords.add(span.harmony().text()));
    ArrayNode notes = node.putArray("notes");
    for (HeardNote heard : phrase.harmony().notes()) {
      ObjectNode note = notes.addObject();
      note(note, heard.note());
      note.put("role", heard.role().text());
    }
    node.put("treatment", verdict.treatment().word());
    node.put("family", verdict.family().word());
    if (!verdict.detail().isEmpty()) {
      node.put("detail", verdict.detail());
    }
    if (verdict.family() == Family.NEW) {
      node.put("material", verdict.material().words());
    }
    node.put("transposition", verdict.transposition());
    node.put("shiftBeats", thousandths(verdict.shiftBeats()));
    node.put("timeScale", thousandths(verdict.timeScale()));
    node.put("confidence", thousandths(verdict.confidence()));
    node.put("restates", thousandths(verdict.restates()));
    Evidence evidence = verdict.evidence();
    node.putObject("evidence")
        .put("rhythm", thousandths(evidence.rhythm()))
        .put("contour", thousandths(evidence.contour()))
        .put("intervals", thousandths(evidence.intervals()));
    fit(node, phrase.harmony().fit());
    phrase
        .expectation()
        .ifPresent(
            e ->
                node.putObject("expected")
                    .put("way", e.way().words())
                    .put("share", thousandths(e.share()))
                    .put("nearness", thousandths(e.nearness()))
                    .put("brokeThread", e.brokeThread()));
    node.put("why", String.join(" ", OverrulingWords.why(phrase)));
    phrase
        .overruled()
        .ifPresent(
            o -> {
              ObjectNode overruled = node.putObject("overruled");
              OverrulingJson.put(overruled, o.by());
              overruled.put("heardFamily", o.heard().family().word());
              overruled.put("heardTreatment", o.heard().treatment().word());
            });
  }

  private static void summary(ObjectNode node, Counts counts) {
    node.put("phrases", counts.phrases());
    node.put("carried", counts.carried());
    node.put("restated", counts.restated());
    node.put("varied", counts.varied());
    node.put("new", counts.fresh());
    node.put("longestRun", counts.longestRun());
    ArrayNode lost = node.putArray("lost");
    for (JudgedPhrase phrase : counts.lost()) {
      lost.addObject()
          .put("chorus", phrase.place().chorus())
          .put("bar", phrase.place().bar())
          .put("chord", phrase.mainChord().harmony().text())
          .put("phrase", phrase.index());
    }
    ArrayNode choruses = node.putArray("choruses");
    for (Counts.Chorus chorus : counts.choruses()) {
      ObjectNode one = choruses.addObject();
      one.put("chorus", chorus.number());
      one.put("phrases", chorus.phrases());
      one.put("carried", chorus.carried());
      fit(one, chorus.fit());
    }
  }

  private static void fit(ObjectNode node, Optional<Fit> fit) {
    if (fit.isEmpty()) {
      node.putNull("fit");
      return;
    }
    node.putObject("fit")
        .put("score", thousandths(fit.get().score()))
        .put("word", fit.get().word().text());
  }

  private static void note(ObjectNode node, Note note) {
    node.put("onset", thousandths(note.onsetBeats()));
    node.put("duration", Math.max(0.001, thousandths(note.durationBeats())));
    node.put("pitch", note.pitch());
  }

  private static double thousandths(double value) {
    return Math.rint(value * 1000) / 1000;
  }
}
