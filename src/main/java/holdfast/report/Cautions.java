package holdfast.report;

/** What can hurt, said where a player meets it. */
final class Cautions {

  /** Stands at the foot of every report. */
  static final String FOR_THE_PLAYER =
      "Keep headphones and speakers low enough to talk over. If singing hurts or your voice turns"
          + " hoarse, stop for today; if it stays, ask your teacher or a doctor. This page and the"
          + " take stay on your computer unless you pass them on.";

  private Cautions() {}
}
