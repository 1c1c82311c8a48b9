package holdfast.window;

import holdfast.backing.Arrangement;
import holdfast.backing.BarRange;
import holdfast.backing.Feel;
import holdfast.backing.Performance;
import holdfast.chart.Chart;
import holdfast.chart.ChartLibrary;
import holdfast.session.input.InputChoice;
import holdfast.session.input.Inputs;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import holdfast.window.play.EarLight;
import holdfast.window.play.TakeRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JSlider;
import javax.swing.Timer;

/** Are you heard, do you hear me? Then off we go. */
final class CheckPage implements Page {

  private static final int LOOK_MILLIS = 50;
  private static final int CHORUSES = 3;

  /** Looks from one try to the next where nothing can be listened to: about two seconds. */
  private static final int LOOKS_A_TRY = 40;

  private final Desk desk;
  private final TakeRequest.Who who;
  private final JComponent component;
  private final EarLight light;
  private final Prose state;
  private final JButton start;
  private final Timer timer;
  private final Aloud aloud = new Aloud();
  private final JComboBox<String> inputs = new JComboBox<>();
  private final JComponent input;
  private Optional<EarCheck> check = Optional.empty();
  private List<String> names = List.of();
  private int looksWithout;
  private boolean filling;

  CheckPage(Desk desk, TakeRequest.Who who) {
    this.desk = desk;
    this.who = who;
    Kit kit = desk.kit();
    this.light = new EarLight(kit, "");
    light.setBackground(kit.palette().card());
    this.state = kit.prose(desk.words().say("check.play"));
    Chart first = ChartLibrary.shipped(ChartLibrary.names().get(0)).orElseThrow();
    this.start = kit.primary("check.start", () -> begin(first));
    Kit.label(start, desk.words().say("check.start", first.title()));
    JSlider volume = new JSlider(0, 100, desk.preferences().volumePercent());
    volume.addChangeListener(
        event -> desk.keep(desk.preferences().with("volume", Integer.toString(volume.getValue()))));
    this.input = kit.named("check.input", inputs);
    fill();
    inputs.addActionListener(event -> chosen());
    List<java.awt.Component> parts = new ArrayList<>();
    parts.add(kit.title("check.title"));
    parts.add(kit.card(8, kit.heading("check.heard"), input, light, state));
    if (who == TakeRequest.Who.VOICE) {
      parts.add(kit.quiet(desk.words().say("check.voice")));
    }
    parts.add(
        kit.card(
            8,
            kit.heading("check.hear-me"),
            kit.row(
                12,
                kit.button("check.chord", () -> chord(first)),
                kit.named("check.volume", volume)),
            kit.quiet(desk.words().say("check.softly"))));
    parts.add(
        kit.row(
            10,
            start,
            kit.button("check.other-chart", () -> desk.go(Desk.CHARTS)),
            kit.button("check.settings", () -> desk.go(Desk.SETTINGS))));
    this.component = kit.page(720, parts.toArray(java.awt.Component[]::new));
    this.timer = new Timer(LOOK_MILLIS, event -> look());
  }

  private String preference() {
    return who == TakeRequest.Who.VOICE ? "microphone" : "keyboard";
  }

  private void fill() {
    List<? extends InputChoice> all =
        who == TakeRequest.Who.VOICE ? Inputs.microphones() : Inputs.keyboards();
    names = all.stream().map(InputChoice::name).toList();
    filling = true;
    inputs.removeAllItems();
    names.forEach(name -> inputs.addItem(desk.said(name)));
    desk.preferences()
        .text(preference())
        .filter(names::contains)
        .ifPresent(name -> inputs.setSelectedIndex(names.indexOf(name)));
    filling = false;
    input.setVisible(!names.isEmpty());
  }

  private void chosen() {
    if (!filling && inputs.getSelectedIndex() >= 0) {
      desk.keep(desk.preferences().with(preference(), names.get(inputs.getSelectedIndex())));
      listen();
    }
  }

  private void listen() {
    check.ifPresent(EarCheck::stop);
    EarCheck fresh = new EarCheck(desk.devices(), who);
    fresh.start();
    check = Optional.of(fresh);
  }

  private void look() {
    check.ifPresent(
        ear -> {
          boolean troubled = ear.trouble().isPresent();
          looksWithout = troubled ? looksWithout + 1 : 0;
          light.setVisible(!troubled);
          light.show(ear.isHearing(), ear.isListening(), ear.level());
          state.setText(
              ear.trouble()
                  .map(desk::mistake)
                  .orElseGet(
                      () -> desk.words().say(ear.hasHeard() ? "check.is-heard" : "check.play")));
        });
    if (looksWithout >= LOOKS_A_TRY) {
      // Plugged in by now, perhaps.
      looksWithout = 0;
      fill();
      listen();
    }
  }

  private void chord(Chart chart) {
    Arrangement bar =
        Arrangement.of(
            chart, Feel.PLAIN, chart.tempo(), Optional.of(new BarRange(1, 1)), Optional.empty());
    aloud.play(new Performance(bar, OptionalInt.of(1), 0, Set.of()), desk.devices(), desk::tell);
  }

  private void begin(Chart chart) {
    desk.play(TakeRequest.of(chart, CHORUSES, who));
  }

  @Override
  public JComponent component() {
    return component;
  }

  @Override
  public void shown() {
    desk.keep(
        desk.preferences()
            .with(
                "listening",
                who == TakeRequest.Who.VOICE
                    ? Preferences.Listening.VOICE
                    : Preferences.Listening.KEYBOARD));
    listen();
    timer.start();
    start.requestFocusInWindow();
  }

  @Override
  public void left() {
    timer.stop();
    aloud.stop();
    check.ifPresent(EarCheck::stop);
    check = Optional.empty();
  }
}
