package holdfast.report;

import java.net.URI;
import java.net.URISyntaxException;

/** Addresses of files beside a page. */
final class Addresses {

  private Addresses() {}

  /** A file name as an address: blanks, quotes and other letters escaped. */
  static String relative(String name) {
    try {
      return new URI(null, null, "/" + name, null).toASCIIString().substring(1);
    } catch (URISyntaxException e) {
      throw new IllegalArgumentException("no file is called " + name, e);
    }
  }
}
