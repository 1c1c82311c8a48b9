package holdfast.window.calibration;

import holdfast.window.Desk;
import holdfast.window.Page;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import java.awt.KeyEventDispatcher;
import java.awt.KeyboardFocusManager;
import java.awt.event.KeyEvent;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import javax.swing.JButton;
import javax.swing.JComponent;

/** Delay, level and range are measured, a step at a time, in plain words. */
public final class CalibrationPage implements Page {

  private final Desk desk;
  private final JComponent component;
  private final List<JButton> buttons;
  private final Prose delay;
  private final Prose voice;
  private final Queue<Long> taps = new ConcurrentLinkedQueue<>();
  private final KeyEventDispatcher tapping = this::tapped;
  private boolean held;

  /** The page. */
  public CalibrationPage(Desk desk) {
    this.desk = desk;
    Kit kit = desk.kit();
    this.delay = kit.prose("");
    delay.setName("calibrate.delay");
    this.voice = kit.prose("");
    voice.setName("calibrate.voice");
    JButton chirps = kit.primary("calibrate.chirps", () -> measure(Calibrating.Step.CHIRPS, delay));
    JButton taps = kit.button("calibrate.taps", () -> measure(Calibrating.Step.TAPS, delay));
    JButton sing = kit.primary("calibrate.sing", () -> measure(Calibrating.Step.SONG, voice));
    this.buttons = List.of(chirps, taps, sing);
    this.component =
        kit.page(
            760,
            kit.title("page.calibrate"),
            kit.prose(desk.words().say("calibrate.why")),
            kit.card(
                8,
                kit.heading("calibrate.step-one"),
                kit.prose(desk.words().say("calibrate.how-delay")),
                kit.row(8, chirps, taps),
                delay),
            kit.card(
                8,
                kit.heading("calibrate.step-two"),
                kit.prose(desk.words().say("calibrate.how-voice")),
                kit.row(8, sing),
                voice),
            kit.row(8, kit.button("calibrate.done", () -> desk.go(Desk.SETTINGS))));
  }

  private void measure(Calibrating.Step step, Prose told) {
    buttons.forEach(button -> button.setEnabled(false));
    if (step == Calibrating.Step.TAPS) {
      KeyboardFocusManager.getCurrentKeyboardFocusManager().addKeyEventDispatcher(tapping);
    }
    new Calibrating(
            desk,
            step,
            taps,
            told::setText,
            (well, sentence) -> {
              stopTapping();
              told.setText(sentence);
              buttons.forEach(button -> button.setEnabled(true));
              buttons.get(well ? buttons.size() - 1 : 0).requestFocusInWindow();
            })
        .execute();
  }

  /** Any key is a tap; one that is held down is one tap. */
  private boolean tapped(KeyEvent event) {
    if (event.getID() == KeyEvent.KEY_PRESSED && !held) {
      held = true;
      taps.add(System.nanoTime());
    } else if (event.getID() == KeyEvent.KEY_RELEASED) {
      held = false;
    }
    return true;
  }

  private void stopTapping() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager().removeKeyEventDispatcher(tapping);
    held = false;
  }

  @Override
  public JComponent component() {
    return component;
  }

  @Override
  public void shown() {
    buttons.get(0).requestFocusInWindow();
  }

  @Override
  public void left() {
    stopTapping();
  }
}
