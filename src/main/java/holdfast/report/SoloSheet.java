package holdfast.report;

import holdfast.chart.Bar;
import holdfast.chart.ChordSpan;
import holdfast.chart.Form;
import holdfast.chart.MelodySheet;
import holdfast.harmony.ToneName;
import holdfast.melody.Note;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What was played as a lead sheet: the line over its chords, phrase by phrase with its verdict. */
public final class SoloSheet {

  private SoloSheet() {}

  /** The solo of a take, chorus after chorus. */
  public static MelodySheet of(JudgedTake take) {
    Setting setting = take.setting();
    double earliest = -(double) setting.metre().beats();
    List<MelodySheet.NamedNote> notes = new ArrayList<>();
    List<MelodySheet.Words> words = new ArrayList<>();
    List<MelodySheet.Phrase> slurs = new ArrayList<>();
    double before = earliest;
    for (JudgedPhrase phrase : take.phrases()) {
      words.add(new MelodySheet.Words(Math.max(0, phrase.startBeat()), told(phrase)));
      slurs.add(
          new MelodySheet.Phrase(
              phrase.notes().get(0).onsetBeats(),
              phrase.notes().get(phrase.notes().size() - 1).onsetBeats()));
      for (Note note : phrase.notes()) {
        if (note.onsetBeats() >= before) {
          NoteName name =
              ToneName.name(
                  note.pitch(),
                  setting.changes().at(note.onsetBeats()).harmony(),
                  setting.changes().key());
          notes.add(new MelodySheet.NamedNote(note, name));
          before = note.onsetBeats();
        }
      }
    }
    return new MelodySheet(
        setting.chart().title(),
        form(setting),
        setting.changes().key(),
        setting.beats().openingTempo(),
        notes,
        words,
        slurs);
  }

  private static String told(JudgedPhrase phrase) {
    String what =
        phrase.statesTheIdea()
            ? "the idea"
            : PhrasePicture.mark(phrase).word() + ": " + TreatmentWords.of(phrase);
    return "phrase " + (phrase.index() + 1) + ", " + what;
  }

  /** The bars that went round: the form, or the stretch of it that was looped. */
  private static Form form(Setting setting) {
    double round = setting.changes().formBeats();
    int beats = setting.metre().beats();
    if (round <= 0 || round == setting.form().lengthBeats()) {
      return setting.form();
    }
    List<Bar> bars = new ArrayList<>();
    for (int i = 0; i < round / beats; i++) {
      double from = (double) i * beats;
      List<ChordSpan> chords = new ArrayList<>();
      for (ChordSpan span : setting.changes().between(from, from + beats)) {
        double start = Math.max(from, span.startBeat());
        double length = Math.min(from + beats, span.endBeat()) - start;
        if (length > 0) {
          chords.add(new ChordSpan(start, length, span.harmony(), i + 1));
        }
      }
      bars.add(new Bar(i + 1, i + 1, 1, Optional.empty(), false, chords));
    }
    return new Form(setting.metre(), Optional.empty(), bars);
  }
}
