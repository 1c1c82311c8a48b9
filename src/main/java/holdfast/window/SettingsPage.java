package holdfast.window;

import holdfast.backing.sound.OutputLine;
import holdfast.backing.sound.SoundBank;
import holdfast.listening.calibration.Profile;
import holdfast.mistake.UserMistake;
import holdfast.session.Feedback;
import holdfast.session.input.InputChoice;
import holdfast.session.input.Inputs;
import holdfast.window.part.Kit;
import java.awt.Component;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JSlider;
import javax.swing.JTextField;

/** What can be chosen; all of it is kept as text at once. */
final class SettingsPage implements Page {

  private final Desk desk;
  private final Kit kit;
  private final JComponent component;

  SettingsPage(Desk desk) {
    this.desk = desk;
    this.kit = desk.kit();
    this.component =
        kit.page(
            860,
            kit.title("page.settings"),
            kit.card(
                10,
                kit.heading("settings.hearing"),
                kit.row(
                    14,
                    choice(
                        "listening",
                        Preferences.Listening.values(),
                        desk.preferences().listening()),
                    device("keyboard", Inputs.keyboards()),
                    device("microphone", Inputs.microphones()),
                    profile()),
                yesNo("headphones", false),
                kit.row(10, kit.button("settings.measure", () -> desk.go(Desk.CALIBRATE))),
                kit.quiet(desk.words().say("settings.measure.why"))),
            kit.card(
                10,
                kit.heading("settings.sound"),
                kit.row(14, output(), volume()),
                kit.row(
                    10,
                    kit.button("settings.soundfont", this::soundFont),
                    kit.button("settings.no-soundfont", this::ownInstruments))),
            kit.card(
                10,
                kit.heading("settings.coach"),
                kit.row(
                    14,
                    choice("feedback", Feedback.values(), desk.preferences().feedback()),
                    choice("hints", Preferences.Hints.values(), desk.preferences().hints()),
                    student()),
                yesNo("ask-feeling", true),
                kit.quiet(desk.words().say("settings.feedback.why"))),
            kit.card(
                10,
                kit.heading("settings.look"),
                kit.row(
                    14,
                    choice("theme", Preferences.Theme.values(), desk.preferences().theme()),
                    textSize(),
                    language(),
                    choice("note-names", NoteNaming.values(), desk.preferences().noteNames()))),
            kit.quiet(desk.words().say("settings.kept", desk.folder())));
  }

  private JComponent device(String name, List<? extends InputChoice> there) {
    List<String> names = new ArrayList<>(there.stream().map(InputChoice::name).toList());
    return named(name, box(name, names, desk.words().say("settings.first")));
  }

  private JComponent output() {
    return named("output", box("output", OutputLine.names(), desk.words().say("settings.system")));
  }

  /** A list with a first entry that chooses nothing. */
  private JComboBox<String> box(String name, List<String> names, String none) {
    JComboBox<String> box = new JComboBox<>();
    box.setPrototypeDisplayValue("mmmmmmmmmmmmmmm");
    box.addItem(none);
    names.forEach(each -> box.addItem(desk.said(each)));
    desk.preferences()
        .text(name)
        .ifPresent(chosen -> box.setSelectedIndex(names.indexOf(chosen) + 1));
    box.addActionListener(
        event ->
            desk.keep(
                box.getSelectedIndex() <= 0
                    ? desk.preferences().without(name)
                    : desk.preferences().with(name, names.get(box.getSelectedIndex() - 1))));
    return box;
  }

  private JComponent profile() {
    List<String> names = Profile.names();
    JComboBox<String> box = new JComboBox<>();
    box.addItem(desk.words().say("profile.anyone"));
    names.forEach(name -> box.addItem(desk.words().say("profile." + name)));
    desk.preferences().text("profile").ifPresent(p -> box.setSelectedIndex(names.indexOf(p) + 1));
    box.addActionListener(
        event ->
            desk.keep(
                box.getSelectedIndex() <= 0
                    ? desk.preferences().without("profile")
                    : desk.preferences().with("profile", names.get(box.getSelectedIndex() - 1))));
    return named("profile", box);
  }

  private <E extends Enum<E>> JComponent choice(String name, E[] all, E chosen) {
    Function<E, String> word = e -> desk.words().of(name, e);
    JComboBox<String> box = new JComboBox<>();
    for (E each : all) {
      box.addItem(word.apply(each));
    }
    box.setSelectedIndex(List.of(all).indexOf(chosen));
    box.addActionListener(
        event -> desk.change(desk.preferences().with(name, all[box.getSelectedIndex()])));
    return named(name, box);
  }

  private JComponent language() {
    JComboBox<String> box = new JComboBox<>();
    for (Language language : Language.values()) {
      box.addItem(language.ownName());
    }
    box.setSelectedIndex(List.of(Language.values()).indexOf(desk.preferences().language()));
    box.addActionListener(
        event ->
            desk.change(
                desk.preferences()
                    .with("language", List.of(Language.values()).get(box.getSelectedIndex()))));
    return named("language", box);
  }

  private JComponent textSize() {
    JComboBox<String> box = new JComboBox<>();
    List<Integer> sizes = List.of(100, 110, 120, 130, 140, 150);
    sizes.forEach(size -> box.addItem(size + " %"));
    box.setSelectedIndex(Math.max(0, sizes.indexOf(desk.preferences().textPercent() / 10 * 10)));
    box.addActionListener(
        event ->
            desk.change(
                desk.preferences()
                    .with("text-size", sizes.get(box.getSelectedIndex()).toString())));
    return named("text-size", box);
  }

  private JComponent volume() {
    JSlider slider = new JSlider(0, 100, desk.preferences().volumePercent());
    slider.addChangeListener(
        event -> desk.keep(desk.preferences().with("volume", Integer.toString(slider.getValue()))));
    return named("volume", slider);
  }

  private JComponent student() {
    JTextField field = new JTextField(desk.preferences().text("student").orElse(""), 12);
    Runnable keep =
        () ->
            desk.keep(
                field.getText().isBlank()
                    ? desk.preferences().without("student")
                    : desk.preferences().with("student", field.getText().strip()));
    field.addActionListener(event -> keep.run());
    field.addFocusListener(
        new java.awt.event.FocusAdapter() {
          @Override
          public void focusLost(java.awt.event.FocusEvent event) {
            keep.run();
          }
        });
    return named("student", field);
  }

  private Component yesNo(String name, boolean usual) {
    JCheckBox box = new JCheckBox(desk.words().say("settings." + name));
    box.setName("settings." + name);
    box.setOpaque(false);
    box.setSelected(desk.preferences().isOn(name, usual));
    box.addActionListener(event -> desk.keep(desk.preferences().with(name, box.isSelected())));
    return box;
  }

  private JComponent named(String name, JComponent part) {
    return kit.named("settings." + name.toLowerCase(Locale.ROOT), part);
  }

  private void soundFont() {
    desk.files()
        .toOpen(component, "file.soundfonts", "sf2", "dls")
        .ifPresent(file -> desk.tell(taken(file)));
  }

  /** A sound bank that can be read is kept as chosen. */
  private String taken(Path file) {
    try {
      String name = SoundBank.read(file).name();
      desk.keep(desk.preferences().with("soundfont", file.toString()));
      return desk.words().say("settings.soundfont-is", name);
    } catch (UserMistake e) {
      return e.getMessage();
    }
  }

  private void ownInstruments() {
    desk.keep(desk.preferences().without("soundfont"));
    desk.tell(desk.words().say("settings.soundfont-is", desk.said(SoundBank.builtIn().name())));
  }

  @Override
  public JComponent component() {
    return component;
  }
}
