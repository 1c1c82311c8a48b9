package holdfast.window;

import java.text.MessageFormat;
import java.util.ResourceBundle;

/** All that the window says, in one language. */
public final class Words {

  private static final String BUNDLE = "holdfast.window.words";

  private final ResourceBundle bundle;
  private final Language language;

  /** The words of this language. */
  public Words(Language language) {
    this.language = language;
    this.bundle =
        ResourceBundle.getBundle(
            BUNDLE,
            language.bundle(),
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** The language. */
  public Language language() {
    return language;
  }

  /**
   * A text.
   *
   * @throws java.util.MissingResourceException where nobody wrote it
   */
  public String say(String key) {
    return bundle.getString(key);
  }

  /** A text with its blanks filled in. */
  public String say(String key, Object... blanks) {
    return new MessageFormat(bundle.getString(key), language.numbers()).format(blanks);
  }

  /** The word for an enum's constant: {@code theme.dark}. */
  public String of(String prefix, Enum<?> constant) {
    return bundle.getString(prefix + "." + Preferences.word(constant));
  }
}
