package holdfast;

import java.io.File;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What a test needs to start a program of ours in a process of its own, to be killed. */
public final class ChildProgram {

  private ChildProgram() {}

  /** The path to the Java that runs this test. */
  public static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }

  /** The class path of this test, also where whoever runs it loads classes by itself. */
  public static String classPath() {
    if (ChildProgram.class.getClassLoader() instanceof URLClassLoader loader) {
      List<String> places = new ArrayList<>();
      for (URL place : loader.getURLs()) {
        try {
          places.add(Path.of(place.toURI()).toString());
        } catch (URISyntaxException e) {
          throw new AssertionError(e);
        }
      }
      return String.join(File.pathSeparator, places);
    }
    return System.getProperty("java.class.path");
  }
}
