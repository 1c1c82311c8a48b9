package holdfast.disk;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;

/** Where a JSON text stops being one. */
public final class JsonPlace {

  private JsonPlace() {}

  /**
   * The line, counted from 1. A text that nests too deep, or holds a number or a name that is too
   * long, is told without a place: then it is line 1.
   */
  public static int line(JsonProcessingException broken) {
    JsonLocation location = broken.getLocation();
    return location == null ? 1 : Math.max(1, location.getLineNr());
  }
}
