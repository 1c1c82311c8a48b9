package holdfast.command.live;

import holdfast.session.Moment;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.Optional;
import org.jline.terminal.Attributes;
import org.jline.terminal.Terminal;
import org.jline.terminal.TerminalBuilder;
import org.jline.utils.NonBlockingReader;

/**
 * The terminal while a take runs: a bottom line that is written over, lines that stay above it, and
 * single keys. Closing it gives the terminal back as it was.
 */
public final class LiveScreen implements AutoCloseable {

  private static final int NARROWEST = 20;
  private static final int USUAL_WIDTH = 100;

  private final PrintWriter out;
  private final Optional<Terminal> terminal;
  private final Optional<Attributes> before;
  private String bottom = "";

  private LiveScreen(PrintWriter out, Optional<Terminal> terminal) {
    this.out = terminal.map(Terminal::writer).orElse(out);
    this.terminal = terminal;
    this.before = terminal.map(Terminal::enterRawMode);
  }

  /** The real terminal where there is one; else plain lines to {@code out}, and no keys. */
  public static LiveScreen open(PrintWriter out) {
    try {
      Terminal terminal =
          TerminalBuilder.builder()
              .system(true)
              .systemOutput(TerminalBuilder.SystemOutput.SysOut)
              .dumb(false)
              .build();
      return new LiveScreen(out, Optional.of(terminal));
    } catch (IOException | IllegalStateException noTerminal) {
      return plain(out);
    }
  }

  /** Whether what is told goes to a terminal that somebody may look at, and not into a file. */
  public static boolean somebodyLooks() {
    try (Terminal terminal =
        TerminalBuilder.builder()
            .system(true)
            .systemOutput(TerminalBuilder.SystemOutput.SysErr)
            .dumb(false)
            .build()) {
      return terminal.getWidth() > 0;
    } catch (IOException | IllegalStateException noTerminal) {
      return false;
    }
  }

  /** Plain lines and no keys, as when the output goes into a file. */
  public static LiveScreen plain(PrintWriter out) {
    return new LiveScreen(out, Optional.empty());
  }

  /** Writes where we are, over what stood there. */
  public void show(Moment moment) {
    if (terminal.isEmpty()) {
      return;
    }
    String line = BottomLine.of(moment, width() - 1);
    if (!line.equals(bottom)) {
      bottom = line;
      out.print("\r" + line + "\u001b[K");
      out.flush();
    }
  }

  /** Writes a line that stays. */
  public void say(String line) {
    if (terminal.isPresent()) {
      out.print("\r\u001b[K" + line + "\r\n" + bottom);
    } else {
      out.println(line);
    }
    out.flush();
  }

  /** The key that was pressed since the last look, if any. */
  public Optional<Key> key() throws IOException {
    if (terminal.isEmpty()) {
      return Optional.empty();
    }
    int pressed = terminal.get().reader().read(1);
    if (pressed == NonBlockingReader.READ_EXPIRED || pressed == NonBlockingReader.EOF) {
      return Optional.empty();
    }
    return Key.of(pressed);
  }

  /** Whether any key was pressed since the last look. */
  public boolean pressed() throws IOException {
    if (terminal.isEmpty()) {
      return false;
    }
    int key = terminal.get().reader().read(1);
    return key != NonBlockingReader.READ_EXPIRED && key != NonBlockingReader.EOF;
  }

  /** Whether there are keys to press. */
  public boolean hasKeys() {
    return terminal.isPresent();
  }

  @Override
  public void close() {
    terminal.ifPresent(
        t -> {
          out.print("\r\u001b[K");
          out.flush();
          before.ifPresent(t::setAttributes);
          try {
            t.close();
          } catch (IOException e) {
            // Nothing is lost: the terminal is the system's, and stays.
            org.slf4j.LoggerFactory.getLogger(LiveScreen.class).info("closing terminal", e);
          }
        });
  }

  private int width() {
    int width = terminal.map(Terminal::getWidth).orElse(USUAL_WIDTH);
    return width < NARROWEST ? USUAL_WIDTH : width;
  }
}
