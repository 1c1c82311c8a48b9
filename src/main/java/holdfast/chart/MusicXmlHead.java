package holdfast.chart;

import holdfast.theory.Key;
import holdfast.time.Metre;
import java.util.Locale;

/** What every score of ours begins with: the document's own lines, key, time and tempo. */
final class MusicXmlHead {

  private final XmlPage page;
  private final Metre metre;

  MusicXmlHead(XmlPage page, Metre metre) {
    this.page = page;
    this.metre = metre;
  }

  /** The lines before the score. */
  void document() {
    page.line("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
    page.line(
        "<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\""
            + " \"http://www.musicxml.org/dtds/partwise.dtd\">");
  }

  /** The key signature. */
  void key(Key key) {
    page.open("key").leaf("fifths", String.valueOf(key.fifths()));
    page.leaf("mode", key.mode().name().toLowerCase(Locale.ROOT)).close();
  }

  /** The time signature. */
  void time() {
    page.open("time").leaf("beats", String.valueOf(metre.beats()));
    page.leaf("beat-type", String.valueOf(metre.unit())).close();
  }

  /** Words or a rehearsal mark above the staff. */
  void above(String kind, String text) {
    above(kind, text, 0);
  }

  /** As {@link #above(String, String)}, so many divisions after the place where it is written. */
  void above(String kind, String text, long offset) {
    page.open("direction", "placement", "above").open("direction-type");
    page.leaf(kind, text).close();
    if (offset > 0) {
      page.leaf("offset", String.valueOf(offset));
    }
    page.close();
  }

  /**
   * The metronome mark.
   *
   * @param beatsPerMinute in beats of the metre
   */
  void tempo(double beatsPerMinute) {
    // In 6/8, 9/8 and 12/8 three beats make one that is felt.
    boolean isCompound = metre.unit() >= 8 && metre.beats() > 3 && metre.beats() % 3 == 0;
    double marked = isCompound ? beatsPerMinute / 3 : beatsPerMinute;
    int unit = isCompound ? metre.unit() / 2 : metre.unit();
    page.open("direction", "placement", "above").open("direction-type").open("metronome");
    page.leaf("beat-unit", noteType(unit));
    if (isCompound) {
      page.leaf("beat-unit-dot", "");
    }
    page.leaf("per-minute", Decimal.text(Math.rint(marked * 1000) / 1000)).close().close();
    double quarters = beatsPerMinute * metre.quartersPerBeat();
    page.leaf("sound", "", "tempo", Decimal.text(quarters)).close();
  }

  private static String noteType(int unit) {
    return switch (unit) {
      case 1 -> "whole";
      case 2 -> "half";
      case 4 -> "quarter";
      case 8 -> "eighth";
      case 16 -> "16th";
      default -> "32nd";
    };
  }
}
