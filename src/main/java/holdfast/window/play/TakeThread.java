package holdfast.window.play;

import holdfast.backing.Performance;
import holdfast.backing.SoundPlayer;
import holdfast.book.Book;
import holdfast.book.KeptTake;
import holdfast.book.TakeFolder;
import holdfast.book.TakeSettings;
import holdfast.mistake.UserMistake;
import holdfast.motif.Player;
import holdfast.practice.Lesson;
import holdfast.practice.PracticeTake;
import holdfast.practice.Way;
import holdfast.session.DemoPlayer;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.LiveTake;
import holdfast.session.Setting;
import holdfast.session.input.ReadyInput;
import holdfast.window.Devices;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Runs one take beside the event thread, and tells that thread how it ended. */
public final class TakeThread {

  private static final Logger LOG = LoggerFactory.getLogger(TakeThread.class);

  private final TakeRequest request;
  private final Devices devices;
  private final LiveScene scene;
  private final Consumer<FinishedTake> finished;
  private final Consumer<String> failed;

  /**
   * A take to be run.
   *
   * @param finished told on the event thread when it is over
   * @param failed told on the event thread why it could not be played
   */
  public TakeThread(
      TakeRequest request,
      Devices devices,
      LiveScene scene,
      Consumer<FinishedTake> finished,
      Consumer<String> failed) {
    this.request = request;
    this.devices = devices;
    this.scene = scene;
    this.finished = finished;
    this.failed = failed;
  }

  /** Starts; returns at once. */
  public Thread start() {
    Thread thread = new Thread(this::run, "holdfast-take");
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  private void run() {
    try {
      FinishedTake take = request.who() == TakeRequest.Who.DEMO ? demo() : own();
      SwingUtilities.invokeLater(() -> finished.accept(take));
      take.folder().ifPresent(folder -> complete(devices, folder));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (UserMistake e) {
      SwingUtilities.invokeLater(() -> failed.accept(e.getMessage()));
    } catch (IOException | RuntimeException e) {
      LOG.error("the take could not be played", e);
      SwingUtilities.invokeLater(() -> failed.accept(String.valueOf(e.getMessage())));
    }
  }

  /**
   * Adds to a report what takes a while, and to those of takes that were broken off before it.
   *
   * <p>The player reads on meanwhile, or plays again: this must not take time from either.
   */
  @SuppressWarnings("ThreadPriorityCheck") // asks for less, relies on nothing
  public static void complete(Devices devices, TakeFolder folder) {
    Thread.currentThread().setPriority(Thread.MIN_PRIORITY);
    try (Book book = Book.open(devices.folder())) {
      book.complete(folder.name());
      for (String earlier : book.incomplete()) {
        book.complete(earlier);
      }
    } catch (UserMistake e) {
      LOG.warn("the report stays without sound: {}", e.getMessage());
    } catch (RuntimeException e) {
      LOG.error("the report stays without sound", e);
    }
  }

  private FinishedTake demo() throws InterruptedException {
    Performance performance = request.performance();
    DemoPlayer student = DemoPlayer.over(performance);
    try (SoundPlayer band = SoundPlayer.open(devices.sound())) {
      band.trouble().ifPresent(scene::notice);
      JudgedTake judged =
          take(Keeper.NOBODY, Player.KEYBOARD).play(band, student.heardIn(performance), student);
      return new FinishedTake(request, judged, Optional.empty());
    }
  }

  private FinishedTake own() throws InterruptedException, IOException {
    Optional<Lesson> lesson = request.lesson();
    Performance performance = request.performance();
    Optional<String> student = devices.preferences().text("student");
    try (SoundPlayer band = SoundPlayer.open(devices.sound())) {
      band.trouble().ifPresent(scene::notice);
      ReadyInput input = devices.input(request.who()).in(devices.around(band));
      Setting setting =
          lesson
              .map(l -> l.setting(input.player()))
              .orElseGet(
                  () ->
                      Setting.of(
                          performance.arrangement(),
                          performance.tempoMap(),
                          input.player(),
                          request.givenIdea()));
      TakeSettings settings =
          TakeSettings.of(
                  LocalDateTime.now(ZoneId.systemDefault()),
                  setting,
                  performance,
                  input.source().name(),
                  student)
              .answering(request.answers())
              .practisedBy(request.way().map(Way::word));
      Path takes = devices.folder().resolve(Book.TAKES);
      try (KeptTake kept = KeptTake.begin(takes, settings, performance)) {
        JudgedTake judged =
            lesson.isPresent()
                ? lesson(lesson.get(), kept, input, band)
                : take(kept, input.player())
                    .play(band, performance, input.source().keepingSoundIn(kept.recording()));
        kept.finish(judged, student);
        return new FinishedTake(request, judged, Optional.of(kept.folder()));
      }
    }
  }

  private JudgedTake lesson(Lesson lesson, KeptTake kept, ReadyInput input, SoundPlayer band)
      throws InterruptedException {
    PracticeTake take = new PracticeTake(lesson, input.player(), scene, scene.watching(kept));
    return take.play(band, input.source().keepingSoundIn(kept.recording()));
  }

  private LiveTake take(Keeper keeper, Player player) {
    return new LiveTake(
        request.chart(), player, request.givenIdea(), scene, scene.watching(keeper));
  }
}
