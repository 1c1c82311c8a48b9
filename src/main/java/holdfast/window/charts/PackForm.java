package holdfast.window.charts;

import holdfast.book.assignment.Assignment;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.practice.Way;
import holdfast.window.Desk;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import holdfast.window.play.TakeRequest;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JTextField;

/** A teacher packs what is to be done with a chart into one file. */
final class PackForm {

  private final Desk desk;
  private final TakeRequest asked;
  private final JComponent component;
  private final JTextField idea = new JTextField(30);
  private final JComboBox<String> way = new JComboBox<>();
  private final JTextField words = new JTextField(30);

  PackForm(Desk desk, TakeRequest asked, Runnable back) {
    this.desk = desk;
    this.asked = asked;
    Kit kit = desk.kit();
    way.addItem(desk.words().say("pack.plain"));
    for (Way each : Way.values()) {
      way.addItem(desk.said(each.title()));
    }
    this.component =
        kit.page(
            760,
            kit.title("pack.title"),
            new Prose(asked.chart().title(), kit.look().bold(1.15), kit.palette().ink()),
            kit.prose(desk.words().say("pack.why")),
            kit.named("pack.idea", idea),
            kit.named("pack.way", way),
            kit.named("pack.words", words),
            kit.row(8, kit.primary("pack.write", this::write), kit.button("pack.back", back)));
  }

  JComponent component() {
    return component;
  }

  private void write() {
    try {
      Assignment task = task();
      Optional<Path> chosen =
          desk.files().toSave(component, task.chart().title() + Assignment.ENDING);
      if (chosen.isPresent()) {
        String name = chosen.get().toString();
        Path file = Path.of(name.endsWith(Assignment.ENDING) ? name : name + Assignment.ENDING);
        task.write(file);
        desk.tell(desk.words().say("charts.written", file));
      }
    } catch (UserMistake e) {
      desk.tell(desk.mistake(e.getMessage()));
    }
  }

  private Assignment task() {
    int chosen = way.getSelectedIndex();
    return new Assignment(
        UUID.randomUUID().toString(),
        asked.chart(),
        asked.feel(),
        asked.tempo(),
        asked
            .choruses()
            .orElseThrow(
                () -> new UserMistake("an assignment ends some time; choose how many times round")),
        given(),
        chosen <= 0 ? Optional.empty() : Optional.of(List.of(Way.values()).get(chosen - 1)),
        words.getText());
  }

  private Optional<List<Note>> given() {
    if (idea.getText().isBlank()) {
      return Optional.empty();
    }
    try {
      return Optional.of(IdeaNotation.parse(idea.getText()));
    } catch (IllegalArgumentException e) {
      throw new UserMistake(e.getMessage(), e);
    }
  }
}
