package holdfast.report;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/**
 * Stretches of a sound file that lies beside the page. The stretch stands behind the file's name as
 * in Media Fragments URI 1.0 (W3C Recommendation, 25 September 2012), section 4.2.1: {@code
 * take.wav#t=12.5,17}.
 *
 * @param file its name
 * @param zeroSeconds where in the file the take's second 0 is
 */
public record SoundBeside(String file, double zeroSeconds) implements Listening {

  @Override
  public Optional<String> address(double fromSeconds, double toSeconds) {
    double from = Math.max(0, fromSeconds + zeroSeconds);
    double to = toSeconds + zeroSeconds;
    if (to <= from) {
      return Optional.empty();
    }
    String name = URLEncoder.encode(file, StandardCharsets.UTF_8).replace("+", "%20");
    return Optional.of(String.format(Locale.ROOT, "%s#t=%.2f,%.2f", name, from, to));
  }
}
