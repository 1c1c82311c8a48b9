package holdfast.window.invent;

import holdfast.backing.Performance;
import holdfast.backing.SoundPlayer;
import holdfast.book.Book;
import holdfast.book.KeptTake;
import holdfast.book.TakeFolder;
import holdfast.book.TakeSettings;
import holdfast.disk.WholeFile;
import holdfast.mistake.UserMistake;
import holdfast.practice.invent.Invented;
import holdfast.practice.invent.InventingTake;
import holdfast.practice.invent.Vamp;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.session.input.ReadyInput;
import holdfast.window.Devices;
import holdfast.window.play.TakeRequest;
import holdfast.window.play.TakeThread;
import java.io.IOException;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs one inventing session beside the event thread.
 *
 * @param ended told on the event thread when it is over; why it failed, or empty
 */
record InventThread(
    Vamp vamp,
    TakeRequest.Who who,
    Devices devices,
    InventScene scene,
    Consumer<Optional<String>> ended) {

  private static final Logger LOG = LoggerFactory.getLogger(InventThread.class);

  /** Starts; returns at once. */
  Thread start() {
    Thread thread = new Thread(this::run, "holdfast-inventing");
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  private void run() {
    Optional<String> trouble = Optional.empty();
    Optional<TakeFolder> played = Optional.empty();
    try {
      played = Optional.of(play());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (UserMistake e) {
      trouble = Optional.of(e.getMessage());
    } catch (IOException | RuntimeException e) {
      LOG.error("the ideas could not be heard", e);
      trouble = Optional.of(String.valueOf(e.getMessage()));
    }
    Optional<String> why = trouble;
    SwingUtilities.invokeLater(() -> ended.accept(why));
    played.ifPresent(folder -> TakeThread.complete(devices, folder));
  }

  private TakeFolder play() throws InterruptedException, IOException {
    Performance performance = vamp.performance(Optional.empty());
    Optional<String> student = devices.preferences().text("student");
    try (SoundPlayer band = SoundPlayer.open(devices.sound())) {
      band.trouble().ifPresent(scene::notice);
      ReadyInput input = devices.input(who).in(devices.around(band));
      Setting setting =
          Setting.of(
              performance.arrangement(), performance.tempoMap(), input.player(), Optional.empty());
      LocalDateTime now = LocalDateTime.now(ZoneId.systemDefault());
      TakeSettings settings =
          TakeSettings.of(now, setting, performance, input.source().name(), student)
              .practisedBy(Optional.of(Invented.WAY));
      try (KeptTake kept =
          KeptTake.begin(devices.folder().resolve(Book.TAKES), settings, performance)) {
        InventingTake take =
            new InventingTake(performance, input.player(), scene, kept, System.nanoTime());
        JudgedTake judged = take.play(band, input.source().keepingSoundIn(kept.recording()));
        WholeFile.write(
            kept.folder().path().resolve(Invented.FILE),
            Invented.json(take.inventing(), vamp.chords(), judged));
        kept.finish(judged, student);
        return kept.folder();
      }
    }
  }
}
