package holdfast.session.input;

import holdfast.listening.NoteSource;
import holdfast.listening.keyboard.Keyboard;
import holdfast.listening.keyboard.SoundedKeyboard;
import holdfast.motif.Player;
import java.util.List;
import java.util.Optional;

/**
 * A MIDI keyboard, or whatever else sends MIDI notes.
 *
 * @param keyboard which
 */
public record KeyboardInput(Keyboard keyboard) implements InputChoice {

  @Override
  public String name() {
    return keyboard.name();
  }

  @Override
  public ReadyInput in(Surroundings surroundings) {
    NoteSource source =
        surroundings
            .voice()
            .<NoteSource>map(voice -> new SoundedKeyboard(keyboard, voice))
            .orElse(keyboard);
    return new ReadyInput(source, Player.KEYBOARD, Optional.empty(), List.of());
  }
}
