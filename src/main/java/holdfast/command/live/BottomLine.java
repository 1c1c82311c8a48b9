package holdfast.command.live;

import holdfast.session.Moment;

/** A moment of a running take, written on one line. */
final class BottomLine {

  private BottomLine() {}

  /** The line, no wider than the terminal. */
  static String of(Moment moment, int width) {
    StringBuilder text = new StringBuilder();
    if (moment.chorus() == 0) {
      text.append("count-in       ");
    } else {
      text.append("chorus ").append(moment.chorus());
      text.append("  bar ").append(moment.bar()).append('/').append(moment.barsInForm());
      text.append("  ");
    }
    for (int b = 1; b <= moment.beatsInBar(); b++) {
      text.append(b == moment.beat() ? '●' : '·');
    }
    text.append("   now ").append(moment.chord());
    text.append("   next ").append(moment.nextChord()).append("   ");
    text.append(ear(moment));
    moment.warning().ifPresent(w -> text.append("   ! ").append(w));
    return text.length() > width ? text.substring(0, Math.max(0, width)) : text.toString();
  }

  private static String ear(Moment moment) {
    if (!moment.listening()) {
      return "the input is gone";
    }
    return moment.hearing() ? "I hear you ♪" : "listening   ";
  }
}
