package holdfast.chart;

/**
 * A word between two bar lines.
 *
 * @param text the word, blanks left out
 * @param at its index in the line
 */
record BarToken(String text, int at) {

  boolean isSlashes() {
    return text.matches("/+");
  }
}
