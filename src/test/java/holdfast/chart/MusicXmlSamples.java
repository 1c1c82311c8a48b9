package holdfast.chart;

import java.nio.charset.StandardCharsets;

/** Scores as other programs write them, made by hand from the MusicXML 4.0 schema. */
final class MusicXmlSamples {

  private MusicXmlSamples() {}

  /** A score of one part with these measures. */
  static String score(String measures) {
    return """
    <?xml version="1.0" encoding="UTF-8" standalone="no"?>
    <!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">
    <score-partwise version="4.0">
      <work><work-title>Sample</work-title></work>
      <part-list><score-part id="P1"><part-name>Lead</part-name></score-part></part-list>
      <part id="P1">
    """
        + measures
        + "</part></score-partwise>";
  }

  /** A measure of 4/4 in C with this inside, its divisions 2 to the quarter. */
  static String first(String inside) {
    return "<measure number=\"1\"><attributes><divisions>2</divisions><key><fifths>0</fifths>"
        + "<mode>major</mode></key><time><beats>4</beats><beat-type>4</beat-type></time>"
        + "</attributes><sound tempo=\"60\"/>"
        + inside
        + "</measure>";
  }

  static String measure(int number, String inside) {
    return "<measure number=\"" + number + "\">" + inside + "</measure>";
  }

  /** A chord of this kind with what follows the kind. */
  static String harmony(String step, int alter, String kind, String after) {
    String root = "<root><root-step>" + step + "</root-step>";
    String altered = alter == 0 ? "" : "<root-alter>" + alter + "</root-alter>";
    return "<harmony>" + root + altered + "</root><kind>" + kind + "</kind>" + after + "</harmony>";
  }

  static String harmony(String step, String kind) {
    return harmony(step, 0, kind, "");
  }

  /** A rest of so many divisions. */
  static String rest(int divisions) {
    return "<note><rest/><duration>" + divisions + "</duration><voice>1</voice></note>";
  }

  static MusicXmlChart.Reading read(String xml) {
    return MusicXmlChart.read(xml.getBytes(StandardCharsets.UTF_8), "sample.musicxml");
  }
}
