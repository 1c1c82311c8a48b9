package holdfast.window;

import java.awt.Component;
import java.io.File;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JFileChooser;
import javax.swing.JOptionPane;
import javax.swing.filechooser.FileNameExtensionFilter;

/**
 * Lets the user choose a file or a folder.
 *
 * @param words what is asked
 */
public record FileChoice(Words words) {

  /**
   * A file to be read; empty where none was chosen.
   *
   * @param kind the key of the words for such files
   * @param endings of their names, without the dot; others can be chosen as well
   */
  public Optional<Path> toOpen(Component over, String kind, String... endings) {
    JFileChooser chooser = new JFileChooser();
    chooser.setFileFilter(new FileNameExtensionFilter(words.say(kind), endings));
    return chosen(chooser, chooser.showOpenDialog(over));
  }

  /** A folder to be read; empty where none was chosen. */
  public Optional<Path> folder(Component over) {
    JFileChooser chooser = new JFileChooser();
    chooser.setFileSelectionMode(JFileChooser.DIRECTORIES_ONLY);
    return chosen(chooser, chooser.showOpenDialog(over));
  }

  /**
   * A file to be written; empty where none was chosen. One that is there already is asked about.
   *
   * @param name what it is called unless the user calls it otherwise
   */
  public Optional<Path> toSave(Component over, String name) {
    JFileChooser chooser = new Careful();
    chooser.setSelectedFile(new File(name));
    return chosen(chooser, chooser.showSaveDialog(over));
  }

  private static Optional<Path> chosen(JFileChooser chooser, int answer) {
    return answer == JFileChooser.APPROVE_OPTION
        ? Optional.of(chooser.getSelectedFile().toPath())
        : Optional.empty();
  }

  /** Writes over nothing unasked. */
  private final class Careful extends JFileChooser {

    private static final long serialVersionUID = 1L;

    @Override
    public void approveSelection() {
      File file = getSelectedFile();
      if (!file.exists() || mayGo(file)) {
        super.approveSelection();
      }
    }

    private boolean mayGo(File file) {
      Object[] answers = {words.say("file.replace"), words.say("file.keep")};
      return JOptionPane.showOptionDialog(
              this,
              words.say("file.is-there", file.getName()),
              words.say("file.title"),
              JOptionPane.YES_NO_OPTION,
              JOptionPane.QUESTION_MESSAGE,
              null,
              answers,
              answers[1])
          == 0;
    }
  }
}
