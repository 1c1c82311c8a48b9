package holdfast.chart;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * An element of XML with all that is in it.
 *
 * @param name its name
 * @param attributes its attributes by name
 * @param text its own text, without blanks around it
 * @param children its elements, in order
 */
record XmlNode(String name, Map<String, String> attributes, String text, List<XmlNode> children) {

  Optional<String> attribute(String wanted) {
    return Optional.ofNullable(attributes.get(wanted));
  }

  /** Whether the attribute has this value. */
  boolean says(String attribute, String value) {
    return value.equals(attributes.get(attribute));
  }

  Stream<XmlNode> all(String wanted) {
    return children.stream().filter(child -> child.name.equals(wanted));
  }

  Optional<XmlNode> first(String wanted) {
    return all(wanted).findFirst();
  }

  /** The first element down a path of names. */
  Optional<XmlNode> at(String... path) {
    Optional<XmlNode> node = Optional.of(this);
    for (String step : path) {
      node = node.flatMap(n -> n.first(step));
    }
    return node;
  }

  /** The text of the first element down a path of names, where it has any. */
  Optional<String> textAt(String... path) {
    return at(path).map(XmlNode::text).filter(text -> !text.isEmpty());
  }

  /** The number in the first element down a path of names; empty where there is none to be read. */
  Optional<Double> numberAt(String... path) {
    return textAt(path).flatMap(XmlNode::number);
  }

  /** The text as a finite number, where it is one. */
  static Optional<Double> number(String text) {
    try {
      return Optional.of(Double.parseDouble(text)).filter(Double::isFinite);
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  /** The text as a whole number; 0 where it is none. */
  static int whole(String text) {
    return number(text).map(number -> (int) Math.rint(number)).orElse(0);
  }
}
