package holdfast.session.input;

/** Something that a player can be heard through. */
public sealed interface InputChoice permits KeyboardInput, MicrophoneInput {

  /** What people call it; unique among the inputs of its kind. */
  String name();

  /**
   * Makes it ready to listen to, with all that is known of its devices and its player. The device
   * itself is opened only when a take begins.
   *
   * @throws holdfast.mistake.UserMistake when what is stored about it was spoilt
   */
  ReadyInput in(Surroundings surroundings);
}
