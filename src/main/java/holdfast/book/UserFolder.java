package holdfast.book;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/**
 * Where the user's takes, settings and logs are kept: {@code $HOLDFAST_HOME} where it is set, else
 * the place that the operating system gives programs for their data. Nothing leaves the machine.
 */
public final class UserFolder {

  /** A system property that moves the folder, for tests and for the log. */
  public static final String PROPERTY = "holdfast.data";

  private UserFolder() {}

  /** The folder, which may not exist yet. */
  public static Path path() {
    String moved = System.getProperty(PROPERTY, "");
    if (!moved.isEmpty()) {
      return Path.of(moved);
    }
    return path(
        System.getenv(), System.getProperty("os.name"), Path.of(System.getProperty("user.home")));
  }

  static Path path(Map<String, String> environment, String system, Path home) {
    Optional<Path> own = folder(environment, "HOLDFAST_HOME");
    if (own.isPresent()) {
      return own.get();
    }
    if (system.startsWith("Windows")) {
      return folder(environment, "APPDATA").orElse(home).resolve("Holdfast");
    }
    if (system.startsWith("Mac")) {
      return home.resolve("Library").resolve("Application Support").resolve("Holdfast");
    }
    // freedesktop.org Base Directory Specification: data of the user's.
    return folder(environment, "XDG_DATA_HOME")
        .orElse(home.resolve(".local").resolve("share"))
        .resolve("holdfast");
  }

  private static Optional<Path> folder(Map<String, String> environment, String name) {
    return Optional.ofNullable(environment.get(name)).filter(s -> !s.isBlank()).map(Path::of);
  }
}
