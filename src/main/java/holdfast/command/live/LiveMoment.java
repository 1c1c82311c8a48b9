package holdfast.command.live;

import java.util.Optional;

/**
 * Where a running take is, as the bottom line tells it.
 *
 * @param chorus counted from 1; 0 during the count-in
 * @param bar the bar of the form, from 1
 * @param barsInForm how many bars the form has
 * @param beat the beat of the bar, from 1
 * @param beatsInBar how many beats a bar has
 * @param chord the chord that sounds, as a musician reads it
 * @param nextChord the chord after it
 * @param hearing whether a note of the player's sounds at this moment
 * @param listening whether the input is there
 * @param warning what to look out for in the next bar
 */
public record LiveMoment(
    int chorus,
    int bar,
    int barsInForm,
    int beat,
    int beatsInBar,
    String chord,
    String nextChord,
    boolean hearing,
    boolean listening,
    Optional<String> warning) {

  /** The bottom line, no wider than the terminal. */
  String line(int width) {
    StringBuilder text = new StringBuilder();
    if (chorus == 0) {
      text.append("count-in      ");
    } else {
      text.append("chorus ").append(chorus).append("  bar ");
      text.append(bar).append('/').append(barsInForm).append("  ");
    }
    for (int b = 1; b <= beatsInBar; b++) {
      text.append(b == beat ? '●' : '·');
    }
    text.append("   now ").append(chord).append("   next ").append(nextChord).append("   ");
    text.append(listening ? hearing ? "I hear you ♪" : "listening   " : "the input is gone");
    warning.ifPresent(w -> text.append("   ! ").append(w));
    return text.length() > width ? text.substring(0, Math.max(0, width)) : text.toString();
  }
}
