package holdfast.window;

import holdfast.mistake.UserMistake;
import holdfast.window.part.Kit;
import holdfast.window.part.Prose;
import holdfast.window.play.FinishedTake;
import holdfast.window.play.LiveScene;
import holdfast.window.play.PlayPage;
import holdfast.window.play.TakeRequest;
import holdfast.window.play.TakeThread;
import java.awt.BorderLayout;
import java.awt.Desktop;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What all pages share: the user's folder and choices, the words and the look, the page that is
 * shown, the take that runs. On the event thread only.
 */
public final class Desk {

  /** The page where everything begins. */
  public static final String HOME = "home";

  /** The charts, to be chosen from. */
  public static final String CHARTS = "charts";

  /** The ways of practising. */
  public static final String WAYS = "ways";

  /** Ideas, one after another, over a chord or two. */
  public static final String INVENT = "invent";

  /** What a teacher asked for. */
  public static final String TASK = "task";

  /** Delay, level and range are measured. */
  public static final String CALIBRATE = "calibrate";

  /** What came back from a class. */
  public static final String CLASS = "class";

  /** Who plays, and what they played. */
  public static final String BOOK = "book";

  /** What came of the last take. */
  public static final String AFTER = "after";

  /** Whether a voice is heard. */
  static final String CHECK_VOICE = "check-voice";

  /** Whether a keyboard is heard. */
  static final String CHECK_KEYBOARD = "check-keyboard";

  /** What can be chosen. */
  public static final String SETTINGS = "settings";

  private static final Logger LOG = LoggerFactory.getLogger(Desk.class);

  /**
   * A report with the sound of a long take is written in less; a hanging disk is not waited for.
   */
  private static final Duration LONGEST_WRITING = Duration.ofMinutes(10);

  private final Path folder;
  private final JPanel place = new JPanel(new BorderLayout());
  private final Map<String, Page> pages = new HashMap<>();
  private final Runnable changed;
  private Preferences preferences;
  private Kit kit;
  private Interpreter interpreter;
  private Prose message;
  private String current = HOME;
  private Optional<Page> shown = Optional.empty();
  private Optional<PlayPage> playing = Optional.empty();
  private Optional<LiveScene> scene = Optional.empty();
  private final List<Thread> writers = new CopyOnWriteArrayList<>();
  private Optional<Path> task = Optional.empty();
  private Optional<FinishedTake> lastTake = Optional.empty();

  /**
   * A desk.
   *
   * @param folder the user's folder
   * @param changed told when another page or another look is shown
   */
  Desk(Path folder, Runnable changed) {
    this.folder = folder;
    this.changed = changed;
    this.preferences = new Preferences(KeyedText.read(settingsFile()));
    dress();
  }

  private Path settingsFile() {
    return folder.resolve("settings.txt");
  }

  private void dress() {
    Look look = Look.install(preferences);
    kit = new Kit(look, new Words(preferences.language()));
    interpreter = new Interpreter(preferences.language(), preferences.noteNames());
    // For the parts that speak for themselves, such as the choice of a file.
    JComponent.setDefaultLocale(preferences.language().numbers());
    message = new Prose("", look.font(1), look.palette().ink());
    int inside = look.px(8);
    message.setBorder(BorderFactory.createEmptyBorder(inside, 2 * inside, inside, inside));
    message.setVisible(false);
    pages.clear();
  }

  /** The parts that pages are put together from. */
  public Kit kit() {
    return kit;
  }

  /** What the window says. */
  public Words words() {
    return kit.words();
  }

  /** What the user chose. */
  public Preferences preferences() {
    return preferences;
  }

  /** Lets the user choose a file. */
  public FileChoice files() {
    return new FileChoice(words());
  }

  /** The user's folder. */
  public Path folder() {
    return folder;
  }

  /** What is listened to and what sounds. */
  public Devices devices() {
    return new Devices(preferences, folder);
  }

  /** What the coach says, in the window's language and with its names of notes. */
  public String said(String english) {
    return interpreter.say(english);
  }

  /** The same for what a terminal says behind the program's name: here it begins a line. */
  public String mistake(String english) {
    String words = said(english);
    return words.isEmpty() ? "" : Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  /** Who plays here, as it was chosen last. */
  public TakeRequest.Who player() {
    return preferences.listening() == Preferences.Listening.VOICE
        ? TakeRequest.Who.VOICE
        : TakeRequest.Who.KEYBOARD;
  }

  /** The page that checks whether this player is heard. */
  void check(TakeRequest.Who who) {
    go(who == TakeRequest.Who.VOICE ? CHECK_VOICE : CHECK_KEYBOARD);
  }

  /** The place where pages are shown. */
  JComponent place() {
    return place;
  }

  /** A sentence at the bottom of the window. */
  JComponent message() {
    return message;
  }

  /** The name of the page that is shown. */
  public String current() {
    return current;
  }

  /** What is shown, in a few words, for the frame and for screen readers. */
  String title() {
    if (isPlaying()) {
      return playing.get().title();
    }
    if (current.equals(TASK) && task.isPresent()) {
      return String.valueOf(task.get().getFileName());
    }
    boolean checks = current.equals(CHECK_VOICE) || current.equals(CHECK_KEYBOARD);
    return words().say(checks ? "check.title" : "page." + current).replace("&", "");
  }

  /** The page that is shown. */
  public Optional<Page> shown() {
    return shown;
  }

  /** Shows another page. While a take runs nothing else is shown. */
  public void go(String name) {
    if (isPlaying()) {
      return;
    }
    tell("");
    Page page =
        pages.computeIfAbsent(
            name,
            n ->
                Pages.ALL.stream()
                    .filter(entry -> entry.name().equals(n))
                    .findFirst()
                    .orElseThrow()
                    .make()
                    .apply(this));
    current = name;
    show(page);
  }

  private void show(Page page) {
    shown.ifPresent(Page::left);
    shown = Optional.of(page);
    place.removeAll();
    place.add(page.component(), BorderLayout.CENTER);
    changed.run();
    place.revalidate();
    place.repaint();
    page.shown();
  }

  /** Whether a take runs. */
  public boolean isPlaying() {
    return playing.isPresent();
  }

  /** The take that runs, if one does. */
  public Optional<PlayPage> playing() {
    return playing;
  }

  /** The last take that was played since the window was opened. */
  public Optional<FinishedTake> lastTake() {
    return lastTake;
  }

  /** The file of the teacher's that was opened last. */
  public Optional<Path> task() {
    return task;
  }

  /** Opens what a teacher packed; not while a take runs. */
  public void openTask(Path file) {
    if (isPlaying()) {
      return;
    }
    task = Optional.of(file);
    pages.remove(TASK);
    go(TASK);
  }

  /** Asks the take that runs for something. */
  void ask(holdfast.session.Audience.Wish wish) {
    scene.ifPresent(s -> s.ask(wish));
  }

  /** Plays a take: shows it while it runs, and what came of it when it is over. */
  public void play(TakeRequest request) {
    play(request, take -> {});
  }

  /**
   * Plays a take.
   *
   * @param then told when what came of it is shown
   */
  public void play(TakeRequest request, Consumer<FinishedTake> then) {
    if (isPlaying()) {
      return;
    }
    String source;
    try {
      source =
          request.who() == TakeRequest.Who.DEMO
              ? words().say("demo.name")
              : devices().input(request.who()).name();
    } catch (UserMistake e) {
      tell(e.getMessage());
      return;
    }
    tell("");
    LiveScene live = new LiveScene();
    PlayPage page;
    try {
      page = new PlayPage(this, request, live, source);
    } catch (UserMistake e) {
      tell(e.getMessage());
      return;
    }
    scene = Optional.of(live);
    playing = Optional.of(page);
    show(page);
    outlive(
        new TakeThread(
                request,
                devices(),
                live,
                take -> {
                  finished(take);
                  then.accept(take);
                },
                this::failed)
            .start());
  }

  /** The program does not end before this thread, which writes a take down. */
  public void outlive(Thread writer) {
    writers.removeIf(thread -> !thread.isAlive());
    writers.add(writer);
  }

  /** Waits until what was played is written down. Not on the event thread. */
  void awaitWriters() throws InterruptedException {
    for (Thread writer : writers) {
      writer.join(LONGEST_WRITING.toMillis());
    }
  }

  private void finished(FinishedTake take) {
    playing = Optional.empty();
    scene = Optional.empty();
    lastTake = Optional.of(take);
    pages.remove(AFTER);
    dress();
    go(AFTER);
  }

  private void failed(String why) {
    playing = Optional.empty();
    scene = Optional.empty();
    go(current);
    tell(why);
  }

  /** Says a sentence at the bottom of the window until the next page is shown; "" for none. */
  public void tell(String sentence) {
    message.setText(mistake(sentence));
    message.setVisible(!sentence.isEmpty());
    message.revalidate();
  }

  /** Opens a page of the disk in the system's browser, and says where it is. */
  public void open(Path page) {
    try {
      if (Desktop.isDesktopSupported() && Desktop.getDesktop().isSupported(Desktop.Action.BROWSE)) {
        Desktop.getDesktop().browse(page.toUri());
      }
      tell(words().say("after.report-is", page));
    } catch (IOException | UnsupportedOperationException e) {
      tell(words().say("after.report-fails", e.getMessage()));
    }
  }

  /** Keeps another choice on the disk, without dressing the window anew. */
  public void keep(Preferences next) {
    preferences = next;
    try {
      KeyedText.write(settingsFile(), words().say("settings.headline"), next.values());
    } catch (IOException | UserMistake e) {
      LOG.warn("the settings are not kept", e);
      tell(words().say("settings.not-kept", e.getMessage()));
    }
  }

  /** Keeps another choice, and dresses the window anew where it shows. */
  public void change(Preferences next) {
    boolean dresses =
        next.theme() != preferences.theme()
            || next.textPercent() != preferences.textPercent()
            || next.language() != preferences.language()
            || next.noteNames() != preferences.noteNames();
    keep(next);
    if (dresses && !isPlaying()) {
      dress();
      go(current);
    }
  }
}
