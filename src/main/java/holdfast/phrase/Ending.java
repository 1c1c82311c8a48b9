package holdfast.phrase;

/** Why a phrase was taken to be over. */
public enum Ending {
  /** Silence: the rest after its last note was long enough. */
  REST,
  /** The idea was complete and began again, with hardly a rest between. */
  RESTART,
  /** The take ended. */
  TAKE
}
