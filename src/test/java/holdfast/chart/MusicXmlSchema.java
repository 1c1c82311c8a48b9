package holdfast.chart;

import java.io.StringReader;
import java.net.URL;
import javax.xml.XMLConstants;
import javax.xml.parsers.SAXParserFactory;
import javax.xml.transform.Source;
import javax.xml.transform.sax.SAXSource;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.XMLReader;

/** The W3C's schema of MusicXML 4.0, as the test library carries it. */
public final class MusicXmlSchema {

  private static final String OFF =
      "http://apache.org/xml/features/nonvalidating/load-external-dtd";

  private final Schema schema;

  public MusicXmlSchema() throws SAXException {
    SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
    // The schema imports two others by names that no file on the path has: they are ours.
    factory.setResourceResolver((type, namespace, publicId, systemId, base) -> null);
    schema =
        factory.newSchema(
            new Source[] {
              source("/holdfast/chart/xml.xsd"),
              source("/holdfast/chart/xlink.xsd"),
              source("/META-INF/jaxb/xsd/musicxml.xsd")
            });
  }

  private static Source source(String resource) {
    URL url = MusicXmlSchema.class.getResource(resource);
    return new StreamSource(url.toExternalForm());
  }

  /** Fails where the score breaks a rule of the schema. */
  public void validate(String xml) throws Exception {
    SAXParserFactory parsers = SAXParserFactory.newInstance();
    parsers.setNamespaceAware(true);
    parsers.setFeature(OFF, false);
    XMLReader reader = parsers.newSAXParser().getXMLReader();
    schema.newValidator().validate(new SAXSource(reader, new InputSource(new StringReader(xml))));
  }
}
