package holdfast.window;

import java.awt.AWTException;
import java.awt.Component;
import java.awt.Container;
import java.awt.Graphics2D;
import java.awt.Point;
import java.awt.Robot;
import java.awt.Window;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.Transferable;
import java.awt.event.InputEvent;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.function.BooleanSupplier;
import javax.imageio.ImageIO;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JFileChooser;
import javax.swing.SwingUtilities;
import javax.swing.TransferHandler.TransferSupport;

/** Drives the real window as a person does: by mouse and keys, on a real display. */
final class WindowDriver implements AutoCloseable {

  private static final Path SHOTS = Path.of("target", "screenshots");

  private final MainWindow window;
  private final Robot robot;

  private WindowDriver(MainWindow window, Robot robot) {
    this.window = window;
    this.robot = robot;
  }

  /** Opens a window of this size. */
  static WindowDriver open(Path folder, int width, int height, Preferences preferences)
      throws InterruptedException, AWTException, IOException {
    KeyedText.write(folder.resolve("settings.txt"), "for a test", preferences.values());
    KeyedText.write(
        folder.resolve("window.txt"),
        "for a test",
        java.util.Map.of(
            "x",
            "0",
            "y",
            "0",
            "width",
            Integer.toString(width),
            "height",
            Integer.toString(height)));
    MainWindow window = MainWindow.open(folder);
    Robot robot = new Robot();
    robot.setAutoDelay(15);
    WindowDriver driver = new WindowDriver(window, robot);
    driver.settle();
    return driver;
  }

  MainWindow window() {
    return window;
  }

  Desk desk() {
    return window.desk();
  }

  /** Runs on the event thread and gives what came of it. */
  <T> T ask(Callable<T> question) {
    FutureTask<T> task = new FutureTask<>(question);
    try {
      if (SwingUtilities.isEventDispatchThread()) {
        task.run();
      } else {
        SwingUtilities.invokeAndWait(task);
      }
      return task.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    } catch (InvocationTargetException | java.util.concurrent.ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }

  void tell(Runnable action) {
    ask(
        () -> {
          action.run();
          return null;
        });
  }

  /** Waits until all events are handled. */
  void settle() {
    robot.waitForIdle();
    tell(() -> {});
  }

  /** Waits until it is so; fails when it is not so in time. */
  void until(String what, double seconds, BooleanSupplier isSo) throws InterruptedException {
    long end = System.nanoTime() + (long) (seconds * 1e9);
    while (!ask(isSo::getAsBoolean)) {
      if (System.nanoTime() > end) {
        throw new AssertionError("never: " + what);
      }
      Thread.sleep(20);
    }
  }

  /** The shown component of this name, if there is one. */
  Optional<Component> find(String name) {
    return ask(
        () ->
            all(window.frame()).stream()
                .filter(c -> name.equals(c.getName()) && c.isShowing())
                .findFirst());
  }

  Component named(String name) {
    return find(name).orElseThrow(() -> new AssertionError("nothing is called " + name));
  }

  /** The shown component of this kind. */
  <T extends Component> T one(Class<T> kind) {
    return ask(
        () ->
            all(window.frame()).stream()
                .filter(c -> kind.isInstance(c) && c.isShowing())
                .map(kind::cast)
                .findFirst()
                .orElseThrow(() -> new AssertionError("there is no " + kind.getSimpleName())));
  }

  static List<Component> all(Container root) {
    List<Component> found = new ArrayList<>();
    for (Component child : root.getComponents()) {
      found.add(child);
      if (child instanceof Container container) {
        found.addAll(all(container));
      }
    }
    return found;
  }

  /** Clicks in the middle of it. */
  void click(Component component) {
    click(component, component.getWidth() / 2, component.getHeight() / 2);
  }

  void click(Component component, int x, int y) {
    settle();
    Point at =
        ask(
            () -> {
              if (component.getParent() instanceof javax.swing.JComponent parent) {
                parent.scrollRectToVisible(component.getBounds());
              }
              Point point = new Point(x, y);
              SwingUtilities.convertPointToScreen(point, component);
              return point;
            });
    robot.mouseMove(at.x, at.y);
    robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
    robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
    settle();
  }

  /** Presses keys together, the first held longest. */
  void press(int... keys) {
    for (int key : keys) {
      robot.keyPress(key);
    }
    for (int i = keys.length - 1; i >= 0; i--) {
      robot.keyRelease(keys[i]);
    }
    settle();
  }

  /** Waits until a file is asked for, and chooses this one. */
  void choose(Path file) throws InterruptedException {
    until("a file is asked for", 10, () -> dialogPart(JFileChooser.class).isPresent());
    JFileChooser chooser = ask(() -> dialogPart(JFileChooser.class).orElseThrow());
    // What the chooser asks back is waited for by whoever expects it.
    SwingUtilities.invokeLater(
        () -> {
          chooser.setSelectedFile(file.toFile());
          chooser.approveSelection();
        });
    settle();
  }

  /** A part of this kind in a window that lies over ours. */
  static <T extends Component> Optional<T> dialogPart(Class<T> kind) {
    return java.util.Arrays.stream(Window.getWindows())
        .filter(window -> window instanceof JDialog && window.isShowing())
        .flatMap(window -> all(window).stream())
        .filter(part -> kind.isInstance(part) && part.isShowing())
        .map(kind::cast)
        .findFirst();
  }

  /** Drops a file on it, as far as a program can tell. */
  boolean drop(JComponent on, Path file) {
    Transferable files =
        new Transferable() {
          @Override
          public DataFlavor[] getTransferDataFlavors() {
            return new DataFlavor[] {DataFlavor.javaFileListFlavor};
          }

          @Override
          public boolean isDataFlavorSupported(DataFlavor flavor) {
            return flavor.equals(DataFlavor.javaFileListFlavor);
          }

          @Override
          public Object getTransferData(DataFlavor flavor) {
            return List.of(file.toFile());
          }
        };
    return ask(
        () -> {
          TransferSupport support = new TransferSupport(on, files);
          return on.getTransferHandler().canImport(support)
              && on.getTransferHandler().importData(support);
        });
  }

  /** Paints the window into a picture under target/. */
  void shot(String name) {
    settle();
    BufferedImage image =
        ask(
            () -> {
              Component all = window.frame().getRootPane();
              BufferedImage picture =
                  new BufferedImage(all.getWidth(), all.getHeight(), BufferedImage.TYPE_INT_RGB);
              Graphics2D g = picture.createGraphics();
              all.printAll(g);
              g.dispose();
              return picture;
            });
    try {
      Files.createDirectories(SHOTS);
      ImageIO.write(image, "png", SHOTS.resolve(name + ".png").toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Closes the window, and waits for what is still being written down. */
  @Override
  public void close() {
    tell(window::close);
    try {
      window.awaitEnd();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
