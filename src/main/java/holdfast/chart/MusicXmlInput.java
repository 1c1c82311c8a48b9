package holdfast.chart;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.MissingResourceException;
import javax.xml.XMLConstants;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Walks through a MusicXML file with one measure in memory at a time. Nothing outside the file is
 * ever read: document types are passed over and entities are not expanded.
 */
final class MusicXmlInput implements AutoCloseable {

  /** Deeper than any score nests. */
  private static final int DEEPEST = 64;

  /** More elements than a measure or a part list of the largest score has. */
  private static final int MOST_NODES = 500_000;

  private final String source;
  private final XMLStreamReader reader;

  MusicXmlInput(byte[] xml, String source) {
    this.source = source;
    try {
      this.reader = factory().createXMLStreamReader(new StringReader(XmlText.of(xml, source)));
    } catch (XMLStreamException e) {
      throw notWellFormed(e);
    }
  }

  private static XMLInputFactory factory() {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
    factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
    return factory;
  }

  /** Goes into the file's outermost element and tells its name. */
  String enterRoot() {
    while (true) {
      if (next() == XMLStreamConstants.START_ELEMENT) {
        return reader.getLocalName();
      }
    }
  }

  /** Goes to the next element inside the one that was entered; false, and out of it, at its end. */
  boolean nextInside() {
    while (true) {
      int event = next();
      if (event == XMLStreamConstants.START_ELEMENT) {
        return true;
      }
      if (event == XMLStreamConstants.END_ELEMENT) {
        return false;
      }
    }
  }

  /** The name of the element that stands here. */
  String name() {
    return reader.getLocalName();
  }

  /** Takes the element that stands here with all that is in it. */
  XmlNode take() {
    int[] nodes = {0};
    return take(0, nodes);
  }

  private XmlNode take(int depth, int[] nodes) {
    if (depth > DEEPEST || ++nodes[0] > MOST_NODES) {
      throw new ChartException(
          source, "its elements nest too deep or are too many", "export it again as MusicXML");
    }
    String name = reader.getLocalName();
    Map<String, String> attributes = new HashMap<>();
    for (int i = 0; i < reader.getAttributeCount(); i++) {
      attributes.put(reader.getAttributeLocalName(i), reader.getAttributeValue(i));
    }
    StringBuilder text = new StringBuilder();
    List<XmlNode> children = new ArrayList<>();
    while (true) {
      switch (next()) {
        case XMLStreamConstants.START_ELEMENT -> children.add(take(depth + 1, nodes));
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA ->
            text.append(reader.getText());
        case XMLStreamConstants.END_ELEMENT -> {
          return new XmlNode(
              name, Map.copyOf(attributes), text.toString().strip(), List.copyOf(children));
        }
        default -> {
          // Remarks, instructions and unexpanded entities say nothing about the chords.
        }
      }
    }
  }

  private int next() {
    try {
      if (!reader.hasNext()) {
        throw new ChartException(source, "it ends too early", "export it again as MusicXML");
      }
      return reader.next();
    } catch (XMLStreamException e) {
      throw notWellFormed(e);
    } catch (MissingResourceException e) {
      // The JDK's parser knows no words for some mistakes in a doctype.
      throw new ChartException(source, "it is not well-formed XML", "export it again as MusicXML");
    }
  }

  private ChartException notWellFormed(XMLStreamException e) {
    Location location = e.getLocation();
    return new ChartException(
        source,
        location == null ? 0 : Math.max(0, location.getLineNumber()),
        location == null ? 0 : Math.max(0, location.getColumnNumber()),
        "it is not well-formed XML",
        "export it again as MusicXML");
  }

  @Override
  public void close() {
    try {
      reader.close();
    } catch (XMLStreamException e) {
      throw notWellFormed(e);
    }
  }
}
