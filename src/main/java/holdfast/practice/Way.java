package holdfast.practice;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A way of practising with the coach. */
public enum Way {
  /** The coach begins, the student goes on. */
  HEAD_START(
      "head-start",
      "Head start",
      "I say the idea over the first chord, and the rest of the chorus is yours."),
  /** Chord by chord in turn. */
  SWAP(
      "swap",
      "Swap",
      "We share the idea chord by chord: I say it over one, you say it over the next."),
  /** The student says the idea, the coach carries it, the student sings it back. */
  SING_BACK(
      "sing-back",
      "Sing back",
      "You say an idea; I carry it to each chord, and you sing or play back what you heard."),
  /** Hard bars round and round, slower at first. */
  CLIMB(
      "climb",
      "Climb",
      "The hard bars go round and round, slowly at first and a little faster each time you hold"
          + " on to the idea."),
  /** One kind of chord in all twelve keys. */
  TWELVE_KEYS(
      "twelve-keys",
      "Twelve keys",
      "One kind of chord goes through all twelve keys, and you take the idea along."),
  /** Two statements are heard, the third is sung. */
  GUESS_NEXT(
      "guess-next",
      "Guess the next",
      "You hear the idea over two chords and sing how it goes on over the third; then I sing mine."
          + " Good for a whole class.");

  private final String word;
  private final String title;
  private final String explanation;

  Way(String word, String title, String explanation) {
    this.word = word;
    this.title = title;
    this.explanation = explanation;
  }

  /** The way of this word, as it is typed; dashes, blanks and capitals make no difference. */
  public static Optional<Way> read(String word) {
    return Arrays.stream(values()).filter(way -> plain(way.word).equals(plain(word))).findFirst();
  }

  /** As it is typed: {@code head-start}. */
  public String word() {
    return word;
  }

  /** As a heading or on a button: {@code Head start}. */
  public String title() {
    return title;
  }

  /** What happens in it, in one sentence to the student. */
  public String explanation() {
    return explanation;
  }

  /** Whether the coach brings an idea where nobody gives one; else the student does. */
  public boolean coachBringsIdea() {
    return switch (this) {
      case HEAD_START, SWAP, GUESS_NEXT -> true;
      case SING_BACK, CLIMB, TWELVE_KEYS -> false;
    };
  }

  private static String plain(String word) {
    return word.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", "");
  }
}
