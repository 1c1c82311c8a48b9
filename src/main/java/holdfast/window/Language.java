package holdfast.window;

import java.util.Locale;

/** The languages of the window. */
public enum Language {
  ENGLISH("English", Locale.ROOT, Locale.ENGLISH),
  GERMAN("Deutsch", Locale.GERMAN, Locale.GERMAN);

  private final String ownName;
  private final Locale bundle;
  private final Locale numbers;

  Language(String ownName, Locale bundle, Locale numbers) {
    this.ownName = ownName;
    this.bundle = bundle;
    this.numbers = numbers;
  }

  /** The system's language where it is one of ours, else English. */
  static Language ofSystem() {
    return Locale.getDefault().getLanguage().equals("de") ? GERMAN : ENGLISH;
  }

  /** What it calls itself. */
  public String ownName() {
    return ownName;
  }

  /** Which file of words; English is the file without a language. */
  Locale bundle() {
    return bundle;
  }

  /** How numbers are written. */
  public Locale numbers() {
    return numbers;
  }
}
