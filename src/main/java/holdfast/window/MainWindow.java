package holdfast.window;

import holdfast.session.Audience.Wish;
import holdfast.window.part.Kit;
import java.awt.AWTError;
import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import java.awt.Rectangle;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CountDownLatch;
import javax.swing.BorderFactory;
import javax.swing.ButtonGroup;
import javax.swing.ImageIcon;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The window of the program: its frame, its menu, the row of pages, and where it stood last. */
public final class MainWindow {

  private static final Logger LOG = LoggerFactory.getLogger(MainWindow.class);

  private static final String NAME = "Holdfast";

  private static final Dimension USUAL = new Dimension(1200, 760);
  private static final Dimension SMALLEST = new Dimension(800, 540);

  private final Path placeFile;
  private final JFrame frame = new JFrame(NAME);
  private final JPanel root = new JPanel(new BorderLayout());
  private final CountDownLatch closed = new CountDownLatch(1);
  private final Desk desk;

  private MainWindow(Path folder) {
    this.placeFile = folder.resolve("window.txt");
    this.desk = new Desk(folder, this::furnish);
    frame.setDefaultCloseOperation(WindowConstants.DO_NOTHING_ON_CLOSE);
    frame.addWindowListener(
        new WindowAdapter() {
          @Override
          public void windowClosing(WindowEvent event) {
            close();
          }
        });
    frame.setIconImage(new ImageIcon(MainWindow.class.getResource("icon.png")).getImage());
    frame.setContentPane(root);
    frame.setTransferHandler(new FileDrop(desk::openTask));
    frame.setMinimumSize(smallest());
    frame.setBounds(lastPlace());
    desk.go(Desk.HOME);
  }

  /** Whether there is a display to open a window on. */
  public static boolean canOpen() {
    if (GraphicsEnvironment.isHeadless()) {
      return false;
    }
    try {
      return GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices().length > 0;
    } catch (HeadlessException | AWTError | NoClassDefFoundError noDisplay) {
      // DISPLAY names a screen that is not there, or the JDK came without its windows.
      LOG.info("no window can be opened", noDisplay);
      return false;
    }
  }

  /** Opens the window, and waits until it is closed. */
  public static void run(Path folder) throws InterruptedException {
    open(folder).awaitEnd();
  }

  /** Opens the window on what a teacher packed, and waits until it is closed. */
  public static void run(Path folder, Path task) throws InterruptedException {
    MainWindow window = open(folder);
    SwingUtilities.invokeLater(() -> window.desk.openTask(task));
    window.awaitEnd();
  }

  /**
   * Waits until the window is closed, and then, unseen, until what was played is written down: its
   * report, its sound, the answer to an assignment.
   */
  public void awaitEnd() throws InterruptedException {
    closed.await();
    desk.awaitWriters();
    settle(() -> {});
  }

  /** Opens the window; called from any other thread than the event thread. */
  public static MainWindow open(Path folder) throws InterruptedException {
    MainWindow[] opened = new MainWindow[1];
    settle(
        () -> {
          opened[0] = new MainWindow(folder);
          opened[0].frame.setVisible(true);
        });
    return opened[0];
  }

  /** Runs on the event thread, after all that waits there. */
  private static void settle(Runnable last) throws InterruptedException {
    try {
      SwingUtilities.invokeAndWait(last);
    } catch (java.lang.reflect.InvocationTargetException e) {
      throw new IllegalStateException("the window fails", e.getCause());
    }
  }

  /** The frame. */
  public JFrame frame() {
    return frame;
  }

  /** What its pages share. */
  public Desk desk() {
    return desk;
  }

  /** Closes it, stops a take that runs, and remembers where it stood. */
  public void close() {
    desk.ask(Wish.STOP);
    desk.shown().ifPresent(Page::left);
    remember();
    frame.dispose();
    closed.countDown();
  }

  /** Puts menu, row of pages, page and message where they belong. */
  private void furnish() {
    Kit kit = desk.kit();
    boolean alone = desk.shown().map(Page::isAlone).orElse(false);
    root.removeAll();
    root.setBackground(kit.palette().paper());
    desk.place().setBackground(kit.palette().paper());
    if (!alone) {
      root.add(row(kit), BorderLayout.NORTH);
    }
    root.add(desk.place(), BorderLayout.CENTER);
    root.add(desk.message(), BorderLayout.SOUTH);
    frame.setTitle(desk.title() + " – " + NAME);
    frame.setJMenuBar(MainMenu.of(desk, this::close));
    SwingUtilities.updateComponentTreeUI(frame.getJMenuBar());
    frame.revalidate();
    frame.repaint();
  }

  private JComponent row(Kit kit) {
    JPanel row = kit.row(4);
    int inside = kit.look().px(10);
    row.setBorder(BorderFactory.createEmptyBorder(inside, 2 * inside, inside / 2, 2 * inside));
    ButtonGroup group = new ButtonGroup();
    for (Pages.Entry entry : Pages.ALL) {
      if (entry.where() == Pages.Where.ROW) {
        JToggleButton button = new JToggleButton();
        Kit.label(button, kit.words().say("page." + entry.name()));
        button.setName("row." + entry.name());
        button.putClientProperty("JButton.buttonType", "toolBarButton");
        button.setSelected(entry.name().equals(desk.current()));
        button.addActionListener(event -> desk.go(entry.name()));
        group.add(button);
        row.add(button);
      }
    }
    return row;
  }

  /** On a small screen with large points a window cannot be as large as we should like. */
  private static Dimension smallest() {
    Rectangle screen = screen();
    return new Dimension(
        Math.min(SMALLEST.width, screen.width), Math.min(SMALLEST.height, screen.height));
  }

  private static Rectangle screen() {
    return GraphicsEnvironment.getLocalGraphicsEnvironment()
        .getDefaultScreenDevice()
        .getDefaultConfiguration()
        .getBounds();
  }

  private Rectangle lastPlace() {
    Map<String, String> kept = KeyedText.read(placeFile);
    Preferences numbers = new Preferences(kept);
    Rectangle place =
        new Rectangle(
            numbers.number("x", -20_000, 20_000, Integer.MIN_VALUE),
            numbers.number("y", -20_000, 20_000, Integer.MIN_VALUE),
            numbers.number("width", SMALLEST.width, 20_000, USUAL.width),
            numbers.number("height", SMALLEST.height, 20_000, USUAL.height));
    Rectangle all = screen();
    // A screen may have been unplugged since.
    boolean isThere =
        java.util.Arrays.stream(
                GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices())
            .anyMatch(
                device ->
                    device.getDefaultConfiguration().getBounds().contains(place.getLocation()));
    if (!isThere) {
      place.width = Math.min(place.width, all.width);
      place.height = Math.min(place.height, all.height);
      place.x = all.x + (all.width - place.width) / 2;
      place.y = all.y + (all.height - place.height) / 3;
    }
    return place;
  }

  private void remember() {
    Map<String, String> kept = new TreeMap<>();
    kept.put("x", Integer.toString(frame.getX()));
    kept.put("y", Integer.toString(frame.getY()));
    kept.put("width", Integer.toString(frame.getWidth()));
    kept.put("height", Integer.toString(frame.getHeight()));
    try {
      KeyedText.write(placeFile, "where the window stood", kept);
    } catch (IOException | holdfast.mistake.UserMistake e) {
      LOG.warn("where the window stood is not kept", e);
    }
  }
}
