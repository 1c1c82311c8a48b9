package holdfast.report;

import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.text;

import holdfast.harmony.HeardNote;
import holdfast.listening.PlayedNote;
import holdfast.report.picture.Palette;
import holdfast.report.picture.TimelinePainter;
import holdfast.report.picture.TimelineRow;
import holdfast.report.picture.TimelineRow.Sounding;
import holdfast.report.picture.TimelineRow.Voice;
import holdfast.session.BeatTiming;
import holdfast.session.Intonation;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** One chorus note by note: what each note does over its chord, and when it came. */
final class TimelineSection {

  private static final double PAPER_WIDTH = 690;
  private static final int PAPER_BARS_IN_A_ROW = 4;

  /** As wide as a phone; where there is room, two stand side by side. */
  private static final double WIDTH = 344;

  private static final int BARS_IN_A_ROW = 2;

  /** Longer forms stand in longer rows, so that they stay on one page. */
  private static final int SHORT_FORM = 16;

  /**
   * The voice is drawn at every second value, in seconds: 30 px hold a second, more is not seen.
   */
  private static final double VOICE_STEP_SECONDS = 2 * PitchTrace.STEP_SECONDS;

  /** A voice slides into a note and out of it by so much. */
  private static final double SLIDE_BEATS = 0.15;

  private static final double SLIDE_SEMITONES = 2.5;

  /** Room above the highest and below the lowest note, in semitones. */
  private static final int ROOM = 2;

  private TimelineSection() {}

  static DomContent of(JudgedTake take, Optional<PitchTrace> sung, Pictures pictures) {
    if (take.phrases().isEmpty()) {
      return text("");
    }
    int chorus = chorus(take);
    boolean onPaper = pictures instanceof Pictures.OnPaper;
    int inARow = onPaper ? PAPER_BARS_IN_A_ROW : BARS_IN_A_ROW;
    double width = onPaper ? PAPER_WIDTH : WIDTH;
    List<TimelineRow> rows = rows(take, chorus, sung, inARow);
    return section(
            h2("Chorus " + chorus + ", note by note"),
            p("Bands are the chord's own notes, its root stronger. A full bar rests in its chord, a"
                    + " half-full one is on its way, a hollow one rubs; words below say what notes"
                    + " outside the chord do. +20 ms: the phrase came in a fiftieth of a second"
                    + " after its beat.")
                .withClass("quiet"),
            each(drift(take, chorus), sentence -> p(sentence)),
            sung.isPresent()
                ? p("The thin curve is your voice all along, as the microphone heard it.")
                    .withClass("quiet")
                : text(""),
            div(each(rows, row -> picture(row, width, pictures))).withClass("rows"))
        .withClass("timeline");
  }

  private static DomContent picture(TimelineRow row, double width, Pictures pictures) {
    int last = row.firstBar() + row.bars() - 1;
    String alt =
        String.format(
            Locale.ROOT,
            "Bars %d to %d: %d notes over their chords; the table of phrases tells the same",
            row.firstBar(),
            last,
            row.notes().size());
    return pictures.of(
        "bars" + row.firstBar(),
        alt,
        width,
        TimelinePainter.height(row),
        g -> TimelinePainter.paint(g, 0, 0, width, row, Palette.LIGHT));
  }

  /** Where the idea was let go first, since there is most to see; else the first. */
  static int chorus(JudgedTake take) {
    return take.counts().lost().stream()
        .findFirst()
        .map(phrase -> phrase.place().chorus())
        .orElse(Math.max(1, take.phrases().get(0).place().chorus()));
  }

  static List<TimelineRow> rows(
      JudgedTake take, int chorus, Optional<PitchTrace> sung, int inARowOfShortForms) {
    Setting setting = take.setting();
    List<JudgedPhrase> here =
        take.phrases().stream().filter(p -> p.place().chorus() == chorus).toList();
    int beatsInBar = setting.metre().beats();
    // A looped stretch has a form of its own; the bars are counted from the phrases' places.
    JudgedPhrase any = here.get(0);
    double barOfAny = Math.floor(placed(any, beatsInBar) / beatsInBar) * beatsInBar;
    int bars = setting.form().bars().size();
    double start = barOfAny - (double) (any.place().bar() - 1) * beatsInBar;
    int inARow = bars <= SHORT_FORM ? inARowOfShortForms : 2 * inARowOfShortForms;
    List<Sounding> notes = here.stream().flatMap(p -> sounding(take, p).stream()).toList();
    int lowest = notes.stream().mapToInt(Sounding::pitch).min().orElse(60) - ROOM;
    int highest = notes.stream().mapToInt(Sounding::pitch).max().orElse(72) + ROOM;
    List<TimelineRow> rows = new ArrayList<>();
    for (int from = 0; from < bars; from += inARow) {
      int count = Math.min(inARow, bars - from);
      double first = start + (double) from * beatsInBar;
      double end = first + (double) count * beatsInBar;
      double lead = from == 0 ? lead(notes, first, beatsInBar) : 0;
      rows.add(
          new TimelineRow(
              from + 1,
              first,
              count,
              beatsInBar,
              lead,
              setting.changes().between(Math.max(0, first - lead), Math.max(0, end)).stream()
                  .filter(span -> span.endBeat() > first - lead && span.startBeat() < end)
                  .toList(),
              notes.stream()
                  .filter(n -> n.onset() + n.duration() > first - lead + TimelineRow.EARLY_BEATS)
                  .filter(n -> n.onset() < end - TimelineRow.EARLY_BEATS)
                  .toList(),
              lowest,
              highest,
              sung.map(trace -> voice(trace, setting, notes, first - lead, end))
                  .orElse(List.of())));
    }
    return rows;
  }

  /** Whole beats of a pick-up before the chorus. */
  private static double lead(List<Sounding> notes, double first, int beatsInBar) {
    double early = first - notes.stream().mapToDouble(Sounding::onset).min().orElse(first);
    return early <= TimelineRow.EARLY_BEATS
        ? 0
        : Math.min(beatsInBar, Math.ceil(early - TimelineRow.EARLY_BEATS));
  }

  /**
   * The height of the voice over some beats, one stroke for each stretch without a gap. What is
   * heard far from every note is the band or the room.
   */
  private static List<List<Voice>> voice(
      PitchTrace trace, Setting setting, List<Sounding> notes, double fromBeat, double toBeat) {
    List<List<Voice>> strokes = new ArrayList<>();
    List<Voice> stroke = new ArrayList<>();
    double from = setting.beats().secondsAt(fromBeat);
    double to = setting.beats().secondsAt(toBeat);
    for (double second = from; second < to; second += VOICE_STEP_SECONDS) {
      double pitch = trace.at(second);
      double beat = setting.beats().beatAt(second);
      if (notes.stream().anyMatch(note -> isNear(note, beat, pitch))) {
        stroke.add(new Voice(beat, pitch));
      } else if (!stroke.isEmpty()) {
        strokes.add(List.copyOf(stroke));
        stroke.clear();
      }
    }
    if (!stroke.isEmpty()) {
      strokes.add(List.copyOf(stroke));
    }
    return strokes;
  }

  /** No height (NaN) is near to nothing. */
  private static boolean isNear(Sounding note, double beat, double pitch) {
    return beat >= note.onset() - SLIDE_BEATS
        && beat <= note.onset() + note.duration() + SLIDE_BEATS
        && Math.abs(pitch - note.pitch() - note.cents() / 100) <= SLIDE_SEMITONES;
  }

  private static double placed(JudgedPhrase phrase, int beatsInBar) {
    // A pick-up belongs to the bar that it leads into.
    double start = phrase.startBeat();
    double line = (Math.floor(start / beatsInBar) + 1) * beatsInBar;
    boolean leads = line - start <= 1.5 && phrase.endBeat() - line > line - start;
    return leads || line - start <= 0.26 ? line : start;
  }

  private static List<Sounding> sounding(JudgedTake take, JudgedPhrase phrase) {
    List<Sounding> notes = new ArrayList<>();
    for (int i = 0; i < phrase.notes().size(); i++) {
      HeardNote heard = phrase.harmony().notes().get(i);
      PlayedNote played = phrase.played().get(i);
      Optional<Double> entry =
          i == 0 ? BeatTiming.offMillis(take.setting(), phrase, 0) : Optional.empty();
      notes.add(
          new Sounding(
              heard.note().onsetBeats(),
              heard.note().durationBeats(),
              heard.note().pitch(),
              played.cents(),
              heard.role(),
              PhrasePicture.mark(phrase),
              entry));
    }
    return notes;
  }

  private static List<String> drift(JudgedTake take, int chorus) {
    return Intonation.of(take)
        .flatMap(tuned -> tuned.choruses().stream().filter(c -> c.chorus() == chorus).findFirst())
        .map(
            c ->
                List.of(
                    String.format(
                        Locale.ROOT,
                        "In this chorus your middle stood %.0f cents %s A = 440 Hz (100 cents are a"
                            + " half step). Blue lines are the heights that were meant.",
                        Math.abs(c.cents()),
                        c.cents() < 0 ? "under" : "over")))
        .orElse(List.of());
  }
}
