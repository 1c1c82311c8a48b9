package holdfast.chart;

import holdfast.theory.Key;
import java.util.List;

/**
 * Melodies with chord symbols as MusicXML 4.0: what was played or could be played, for any notation
 * program. Rhythms are written as {@link holdfast.melody.WrittenRhythm} takes them.
 *
 * <p>Source of every element and rule: musicxml.xsd, W3C Music Notation Community Group, MusicXML
 * 4.0, 2021.
 */
public final class MusicXmlMelody {

  /** Where the middle of a melody lies below this MIDI note, it is written in the bass clef. */
  private static final int BASS_CLEF_BELOW = 57;

  private final MelodySheet sheet;
  private final List<MelodyBar> bars;
  private final XmlPage page = new XmlPage();
  private final MusicXmlHead head;
  private final MusicXmlChordWriter chords = new MusicXmlChordWriter(page);
  private final Slurs slurs;
  private final long ticksOfADivision;
  private final MusicXmlNotes notes;

  private MusicXmlMelody(MelodySheet sheet) {
    this.sheet = sheet;
    this.bars = MelodyBars.of(sheet);
    this.slurs = Slurs.of(sheet, bars);
    this.head = new MusicXmlHead(page, sheet.form().metre());
    this.ticksOfADivision = ticksOfADivision(bars);
    this.notes = new MusicXmlNotes(page, sheet.key().map(Key::fifths).orElse(0), ticksOfADivision);
  }

  /** The melody as a score of one part. */
  public static String write(MelodySheet sheet) {
    return new MusicXmlMelody(sheet).write();
  }

  /** The largest division in which all that is written lasts whole numbers. */
  private static long ticksOfADivision(List<MelodyBar> bars) {
    long divisor = NoteValue.TICKS;
    for (MelodyBar bar : bars) {
      divisor = commonDivisor(divisor, bar.endTick() - bar.startTick());
      for (MelodyBar.Written note : bar.notes()) {
        divisor = commonDivisor(divisor, note.piece().ticks());
      }
      for (MelodyBar.Chord chord : bar.chords()) {
        divisor = commonDivisor(divisor, chord.tick() - bar.startTick());
      }
      for (MelodyBar.Word word : bar.words()) {
        divisor = commonDivisor(divisor, word.tick() - bar.startTick());
      }
    }
    return divisor;
  }

  private static long commonDivisor(long one, long other) {
    return other == 0 ? one : commonDivisor(other, one % other);
  }

  private String write() {
    head.document();
    page.open("score-partwise", "version", "4.0");
    page.open("work").leaf("work-title", sheet.title()).close();
    page.open("identification");
    page.open("encoding").leaf("software", "Holdfast").close().close();
    page.open("part-list").open("score-part", "id", "P1");
    page.leaf("part-name", "Melody").close().close();
    page.open("part", "id", "P1");
    for (int i = 0; i < bars.size(); i++) {
      writeBar(i);
    }
    page.close().close();
    return page.toString();
  }

  private void writeBar(int index) {
    MelodyBar bar = bars.get(index);
    boolean isFirst = index == 0;
    boolean isLast = index + 1 == bars.size();
    if (bar.number() == 0) {
      page.open("measure", "number", "0", "implicit", "yes");
    } else {
      page.open("measure", "number", String.valueOf(bar.number()));
    }
    if (isFirst) {
      writeAttributes();
      head.tempo(sheet.tempo());
    }
    bar.section().ifPresent(name -> head.above("rehearsal", name));
    notes.startBar();
    if (bar.notes().isEmpty()) {
      writeAbove(bar, bar.startTick(), bar.endTick());
      notes.writeBarRest(bar.endTick() - bar.startTick());
    }
    for (int i = 0; i < bar.notes().size(); i++) {
      RhythmPiece piece = bar.notes().get(i).piece();
      writeAbove(bar, piece.start(), piece.end());
      notes.write(bar.notes(), i, slurs.at(index, i));
    }
    if (isLast || bar.endsChorus()) {
      page.open("barline", "location", "right");
      page.leaf("bar-style", isLast ? "light-heavy" : "light-light").close();
    }
    page.close();
  }

  private void writeAttributes() {
    page.open("attributes");
    page.leaf("divisions", String.valueOf(NoteValue.TICKS / ticksOfADivision));
    sheet.key().ifPresent(head::key);
    head.time();
    boolean isLow =
        !sheet.notes().isEmpty()
            && sheet.notes().stream().mapToInt(n -> n.note().pitch()).average().orElseThrow()
                < BASS_CLEF_BELOW;
    page.open("clef").leaf("sign", isLow ? "F" : "G").leaf("line", isLow ? "4" : "2").close();
    page.close();
  }

  /** Chords and words over what sounds between two ticks, at their places. */
  private void writeAbove(MelodyBar bar, long from, long to) {
    for (MelodyBar.Chord chord : bar.chords()) {
      if (chord.tick() >= from && chord.tick() < to) {
        chords.write(chord.harmony(), false, (chord.tick() - from) / ticksOfADivision);
      }
    }
    for (MelodyBar.Word word : bar.words()) {
      if (word.tick() >= from && word.tick() < to) {
        head.above("words", word.text(), (word.tick() - from) / ticksOfADivision);
      }
    }
  }
}
