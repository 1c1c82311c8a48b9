package holdfast.window.book;

import holdfast.book.Book;
import holdfast.book.Entry;
import holdfast.book.Search;
import holdfast.book.Student;
import holdfast.book.TakeFolder;
import holdfast.melody.IdeaNotation;
import holdfast.mistake.UserMistake;
import holdfast.window.Desk;
import holdfast.window.Page;
import holdfast.window.invent.IdeaTile;
import holdfast.window.part.Kit;
import java.awt.BorderLayout;
import java.awt.Component;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.ListSelectionModel;
import javax.swing.SwingWorker;

/** The practice book: who plays, their takes, their progress, the ideas they own. */
public final class BookPage implements Page {

  /** Of everybody together; one student is shown with all of theirs. */
  private static final int MOST_TAKES = 500;

  private static final int MOST_IDEAS = 12;
  private static final int ROWS = 8;

  private final Desk desk;
  private final Kit kit;
  private final JPanel panel = new JPanel(new BorderLayout());

  /** What is shown of the book. */
  private record Contents(List<String> students, List<Entry> takes, List<Book.Tried> ideas) {}

  /** The page of the book. */
  public BookPage(Desk desk) {
    this.desk = desk;
    this.kit = desk.kit();
    panel.setBackground(kit.palette().paper());
  }

  @Override
  public JComponent component() {
    return panel;
  }

  @Override
  public void shown() {
    ask(this::contents, this::show);
  }

  private Optional<String> student() {
    return desk.preferences().text("student");
  }

  private Contents contents(Book book) {
    Search search = student().map(Search.ALL::of).orElse(Search.ALL.atMost(MOST_TAKES));
    List<String> students = new ArrayList<>(book.everybody().stream().map(Student::name).toList());
    student()
        .filter(name -> students.stream().noneMatch(s -> Student.isSame(s, name)))
        .ifPresent(students::add);
    return new Contents(students, book.find(search), book.ideas(student()));
  }

  /** Asks the book beside the event thread, and does something with the answer on it. */
  private <T> void ask(Function<Book, T> question, Consumer<T> then) {
    new SwingWorker<T, Void>() {
      @Override
      protected T doInBackground() {
        try (Book book = Book.open(desk.folder())) {
          return question.apply(book);
        }
      }

      @Override
      protected void done() {
        try {
          then.accept(get());
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
        } catch (ExecutionException e) {
          desk.tell(String.valueOf(e.getCause().getMessage()));
        }
      }
    }.execute();
  }

  private void show(Contents contents) {
    List<Component> parts = new ArrayList<>();
    parts.add(kit.title("page.book"));
    parts.add(kit.quiet(desk.words().say("book.here")));
    JComboBox<String> who = who(contents.students());
    parts.add(kit.row(14, kit.named("book.who", who), fresh()));
    if (contents.takes().isEmpty()) {
      parts.add(kit.prose(desk.words().say("book.empty")));
    } else {
      takes(contents, parts);
    }
    parts.add(
        kit.row(
            8,
            kit.button("task.open", () -> TaskPage.choose(desk, panel)),
            kit.button("class.open", () -> desk.go(Desk.CLASS))));
    student().ifPresent(name -> parts.add(forget(name, contents.takes().size())));
    panel.removeAll();
    panel.add(kit.page(940, parts.toArray(Component[]::new)));
    panel.revalidate();
    panel.repaint();
    who.requestFocusInWindow();
  }

  private JComboBox<String> who(List<String> students) {
    JComboBox<String> who = new JComboBox<>();
    who.addItem(desk.words().say("book.nobody"));
    students.forEach(who::addItem);
    int chosen = 0;
    for (int i = 0; i < students.size(); i++) {
      String name = students.get(i);
      if (student().filter(s -> Student.isSame(s, name)).isPresent()) {
        chosen = i + 1;
      }
    }
    who.setSelectedIndex(chosen);
    who.addActionListener(
        event -> {
          int at = who.getSelectedIndex();
          choose(at <= 0 ? Optional.empty() : Optional.of(who.getItemAt(at)));
        });
    return who;
  }

  private void choose(Optional<String> name) {
    desk.keep(
        name.map(n -> desk.preferences().with("student", n))
            .orElseGet(() -> desk.preferences().without("student")));
    shown();
  }

  private JComponent fresh() {
    JTextField name = new JTextField(14);
    Runnable add =
        () -> {
          try {
            Student student = Student.named(name.getText());
            desk.tell("");
            ask(
                book -> {
                  if (book.students().find(student.name()).isEmpty()) {
                    book.students().keep(student);
                  }
                  return student.name();
                },
                kept -> choose(Optional.of(kept)));
          } catch (UserMistake e) {
            desk.tell(e.getMessage());
          }
        };
    name.addActionListener(event -> add.run());
    return kit.row(8, kit.named("book.new", name), kit.button("book.add", add));
  }

  private void takes(Contents contents, List<Component> parts) {
    parts.add(kit.heading("book.progress"));
    parts.add(ProgressPicture.ofCarrying(kit, contents.takes()));
    if (contents.takes().stream().anyMatch(take -> take.fluency().isPresent())) {
      parts.add(kit.heading("book.fluency"));
      parts.add(ProgressPicture.ofInventing(kit, contents.takes()));
    }
    parts.add(kit.heading("book.takes"));
    JList<String> list =
        new JList<>(contents.takes().stream().map(this::line).toArray(String[]::new));
    list.setName("book.list");
    list.getAccessibleContext().setAccessibleName(desk.words().say("book.takes"));
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.setSelectedIndex(0);
    list.setVisibleRowCount(Math.min(ROWS, contents.takes().size()));
    parts.add(kit.scroll(list));
    JButton open =
        kit.button(
            "book.open",
            () -> {
              int at = list.getSelectedIndex();
              if (at >= 0) {
                ask(
                    book -> book.take(contents.takes().get(at).take()),
                    (TakeFolder take) -> desk.open(take.report()));
              }
            });
    parts.add(kit.row(8, open));
    if (!contents.ideas().isEmpty()) {
      parts.add(kit.heading("book.ideas"));
      JPanel ideas = kit.row(12);
      for (int i = 0; i < Math.min(MOST_IDEAS, contents.ideas().size()); i++) {
        ideas.add(
            new IdeaTile(
                kit,
                desk.preferences().noteNames(),
                i + 1,
                IdeaNotation.parse(contents.ideas().get(i).name())));
      }
      parts.add(ideas);
    }
  }

  private String line(Entry take) {
    String who = student().isPresent() ? "" : take.student().map(s -> "   " + s).orElse("");
    String day = take.started().toLocalDate().toString();
    if (take.fluency().isPresent()) {
      Entry.Fluency ideas = take.fluency().get();
      return desk.words().say("book.invented", day, take.chart(), ideas.different(), ideas.said())
          + who;
    }
    return desk.words()
            .say(
                "book.line",
                day,
                take.chart(),
                Math.round(take.tempo()),
                take.carried(),
                take.phrases())
        + who;
  }

  private JComponent forget(String name, int takes) {
    JPanel place = kit.column(8);
    JButton begin = kit.button("book.forget", () -> confirm(place, name, takes));
    Kit.label(begin, desk.words().say("book.forget", name));
    place.add(kit.row(4, begin));
    return place;
  }

  /** Nothing is deleted by one press. */
  private void confirm(JPanel place, String name, int takes) {
    JButton no = kit.primary("book.forget.no", this::shown);
    JButton yes =
        kit.button(
            "book.forget.yes",
            () ->
                ask(
                    book -> book.forget(name),
                    gone -> {
                      choose(Optional.empty());
                      desk.tell(desk.words().say("book.forgotten", name, gone));
                    }));
    place.removeAll();
    place.add(
        kit.card(
            10, kit.prose(desk.words().say("book.forget.ask", name, takes)), kit.row(10, no, yes)));
    panel.revalidate();
    panel.repaint();
    no.requestFocusInWindow();
  }
}
