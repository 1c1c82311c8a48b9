package holdfast.chart;

import holdfast.melody.Note;
import holdfast.melody.WrittenRhythm;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Cuts a melody into bars, and its notes into note values with ties and rests between. */
public final class MelodyBars {

  /** A note of the melody in ticks from bar 1. */
  private record Sounding(MelodySheet.NamedNote note, long start, long end) {}

  private final MelodySheet sheet;
  private final Metre metre;
  private final List<Sounding> melody = new ArrayList<>();
  private final List<MelodyBar> bars = new ArrayList<>();

  private MelodyBars(MelodySheet sheet) {
    this.sheet = sheet;
    this.metre = sheet.form().metre();
    List<Note> rhythm =
        WrittenRhythm.of(sheet.notes().stream().map(MelodySheet.NamedNote::note).toList(), metre);
    for (int i = 0; i < rhythm.size(); i++) {
      long start = tick(rhythm.get(i).onsetBeats());
      long end = tick(rhythm.get(i).endBeats());
      if (i + 1 < rhythm.size()) {
        end = Math.min(end, tick(rhythm.get(i + 1).onsetBeats()));
      }
      if (end > start) {
        melody.add(new Sounding(sheet.notes().get(i), start, end));
      }
    }
  }

  /** The melody bar by bar, as it stands on a staff. */
  public static List<MelodyBar> of(MelodySheet sheet) {
    return new MelodyBars(sheet).bars();
  }

  private List<MelodyBar> bars() {
    Form form = sheet.form();
    long first = melody.isEmpty() ? 0 : melody.get(0).start();
    long pickUp = Math.max(tick(form.pickupBeats()), -Math.min(0, first));
    if (pickUp > 0) {
      add(form.pickup(), -barTicks(), barTicks() - pickUp);
    }
    for (int chorus = 0; chorus < sheet.choruses(); chorus++) {
      for (Bar bar : form.bars()) {
        add(Optional.of(bar), (long) (bars.size() - (pickUp > 0 ? 1 : 0)) * barTicks(), 0);
      }
    }
    return bars;
  }

  private long tick(double beat) {
    return Math.round(beat * metre.quartersPerBeat() * NoteValue.TICKS);
  }

  private long barTicks() {
    return tick(metre.beats());
  }

  /**
   * Adds a bar.
   *
   * @param barStart where its first beat is, in ticks from bar 1
   * @param from where it begins, in ticks from there
   */
  private void add(Optional<Bar> bar, long barStart, long from) {
    double firstBeat =
        bar.filter(b -> b.number() > 0).map(Bar::startBeat).orElse(-(double) metre.beats());
    List<MelodyBar.Chord> chords = new ArrayList<>();
    bar.ifPresent(
        b ->
            b.chords()
                .forEach(
                    span ->
                        chords.add(
                            new MelodyBar.Chord(
                                tick(span.startBeat() - firstBeat), span.harmony()))));
    // The pick-up bar starts a bar before bar 1 would, and so is number 0.
    int number = (int) (barStart / barTicks()) + 1;
    boolean begins = bar.isPresent() && !bar.get().section().equals(sectionBefore(number));
    bars.add(
        new MelodyBar(
            number,
            from,
            barTicks(),
            notes(barStart, from),
            chords,
            words(barStart, from),
            begins ? bar.get().section() : Optional.empty(),
            number > 0 && number % sheet.form().bars().size() == 0));
  }

  private Optional<String> sectionBefore(int number) {
    List<Bar> form = sheet.form().bars();
    return number < 2 || (number - 1) % form.size() == 0
        ? Optional.empty()
        : form.get((number - 2) % form.size()).section();
  }

  private List<MelodyBar.Word> words(long barStart, long from) {
    List<MelodyBar.Word> words = new ArrayList<>();
    for (MelodySheet.Words word : sheet.words()) {
      long tick = tick(word.beat()) - barStart;
      if (tick >= from && tick < barTicks()) {
        words.add(new MelodyBar.Word(tick, word.text()));
      }
    }
    return words;
  }

  private List<MelodyBar.Written> notes(long barStart, long from) {
    List<Sounding> here =
        melody.stream()
            .filter(n -> n.end() > barStart + from && n.start() < barStart + barTicks())
            .toList();
    List<Long> cuts = new ArrayList<>();
    here.forEach(
        n -> {
          cuts.add(n.start() - barStart);
          cuts.add(n.end() - barStart);
        });
    BarRhythm rhythm = new BarRhythm(metre, cuts);
    List<MelodyBar.Written> notes = new ArrayList<>();
    long at = from;
    for (Sounding note : here) {
      boolean tiedFrom = note.start() < barStart + from;
      boolean tiedOn = note.end() > barStart + barTicks();
      long start = tiedFrom ? from : rhythm.placed(note.start() - barStart);
      long end = tiedOn ? barTicks() : rhythm.placed(note.end() - barStart);
      if (end > start) {
        add(notes, rhythm, rhythm.pieces(at, start), Optional.empty(), false, false);
        add(notes, rhythm, rhythm.pieces(start, end), Optional.of(note.note()), tiedFrom, tiedOn);
        at = end;
      }
    }
    if (!notes.isEmpty()) {
      add(notes, rhythm, rhythm.pieces(at, barTicks()), Optional.empty(), false, false);
    }
    return notes;
  }

  private static void add(
      List<MelodyBar.Written> notes,
      BarRhythm rhythm,
      List<RhythmPiece> pieces,
      Optional<MelodySheet.NamedNote> note,
      boolean tiedFrom,
      boolean tiedOn) {
    for (int i = 0; i < pieces.size(); i++) {
      RhythmPiece piece = pieces.get(i);
      notes.add(
          new MelodyBar.Written(
              piece,
              note,
              note.isPresent() && (tiedFrom || i > 0),
              note.isPresent() && (tiedOn || i + 1 < pieces.size()),
              rhythm.beatAt(piece.start()),
              rhythm.groupAt(piece.start())));
    }
  }
}
