package holdfast.window.book;

import holdfast.book.TakeFolder;
import holdfast.book.assignment.Answer;
import holdfast.book.assignment.Assignment;
import holdfast.mistake.UserMistake;
import holdfast.window.Desk;
import holdfast.window.Page;
import holdfast.window.invent.IdeaTile;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import holdfast.window.play.TakeRequest;
import java.awt.Component;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JComponent;

/** What a teacher asked for: shown, played, and packed to be sent back. */
public final class TaskPage implements Page {

  private final Desk desk;
  private final JComponent component;
  private Optional<JButton> start = Optional.empty();

  /** The page for the file that the desk was told of. */
  public TaskPage(Desk desk) {
    this.desk = desk;
    Kit kit = desk.kit();
    List<Component> parts = new ArrayList<>();
    parts.add(kit.title("page.task"));
    try {
      Optional<Path> file = desk.task();
      if (file.isPresent()) {
        show(kit, file.get(), Assignment.read(file.get()), parts);
      } else {
        parts.add(kit.prose(desk.words().say("task.none")));
        parts.add(kit.quiet(desk.words().say("task.what")));
      }
    } catch (UserMistake e) {
      parts.add(kit.prose(desk.mistake(e.getMessage())));
    }
    parts.add(kit.row(8, kit.button("task.open", () -> choose(desk, parts.get(0)))));
    this.component = kit.page(760, parts.toArray(Component[]::new));
  }

  private void show(Kit kit, Path file, Assignment task, List<Component> parts) {
    Prose how =
        kit.prose(
            desk.words()
                .say(
                    task.choruses() == 1 ? "task.how-once" : "task.how",
                    task.chart().title(),
                    Math.round(task.beatsPerMinute()),
                    task.choruses()));
    how.setName("task.how");
    parts.add(how);
    if (!task.words().isEmpty()) {
      parts.add(kit.card(4, kit.prose(task.words())));
    }
    task.way()
        .ifPresent(
            way ->
                parts.add(kit.prose(desk.said(way.title()) + ": " + desk.said(way.explanation()))));
    parts.add(kit.prose(desk.words().say(ideaOf(task))));
    task.idea()
        .ifPresent(
            notes ->
                parts.add(kit.row(4, new IdeaTile(kit, desk.preferences().noteNames(), 1, notes))));
    JButton play =
        kit.primary(
            "task.start",
            () ->
                desk.play(
                    TakeRequest.of(task, desk.player()),
                    take -> take.folder().ifPresent(folder -> answer(file, folder))));
    start = Optional.of(play);
    parts.add(kit.row(8, play));
  }

  private static String ideaOf(Assignment task) {
    if (task.coachBringsIdea()) {
      return "task.coach";
    }
    return task.idea().isPresent() ? "task.idea" : "task.own";
  }

  private void answer(Path file, TakeFolder take) {
    try {
      Path answer = Answer.beside(file, desk.preferences().text("student"));
      Answer.pack(take, answer, false);
      desk.tell(desk.words().say("task.answer", answer));
    } catch (UserMistake e) {
      desk.tell(e.getMessage());
    }
  }

  /** Lets the user choose such a file, and opens it. */
  public static void choose(Desk desk, Component over) {
    desk.files().toOpen(over, "file.assignments", "carry").ifPresent(desk::openTask);
  }

  @Override
  public JComponent component() {
    return component;
  }

  @Override
  public void shown() {
    start.ifPresent(JComponent::requestFocusInWindow);
  }
}
