package holdfast.session.log;

import holdfast.listening.PlayEvent;
import holdfast.listening.PlayEvent.NoteOff;
import holdfast.listening.PlayEvent.NoteOn;
import holdfast.listening.PlayedNote;
import holdfast.listening.PlayedNotes;
import holdfast.listening.midi.TakePart.PedalMove;
import holdfast.mistake.UserMistake;
import holdfast.time.TempoMap;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a take's log holds, whether the take came to its end or broke off.
 *
 * @param settings by name, in the order in which they were first settled
 * @param tempo where beats fall, where it was settled
 * @param events everything that was heard, in the order in which it was
 * @param pedal moves of the sustain pedal
 * @param marks what else happened
 * @param heardSeconds up to when the take was heard
 * @param isBeingWritten whether the program that writes it is still running, so that the take is
 *     not over
 * @param isWhole whether the take came to its end
 * @param brokenLines lines that could not be read; the last line of a killed take counts
 */
public record LoggedTake(
    Map<String, String> settings,
    Optional<TempoMap> tempo,
    List<PlayEvent> events,
    List<PedalMove> pedal,
    List<Mark> marks,
    double heardSeconds,
    boolean isBeingWritten,
    boolean isWhole,
    int brokenLines) {

  /** No take's log is longer: a thousand events a second for an hour; in bytes. */
  private static final int LONGEST_FILE = 256 << 20;

  /** Nobody plays longer than a day at a stretch; in seconds. */
  private static final double LONGEST_SECONDS = 24 * 3600.0;

  /** Further off, a note would have another name; in cents. */
  private static final double MOST_CENTS = 100;

  /**
   * Something that is no note.
   *
   * @param seconds when, in seconds of the take
   */
  public record Mark(double seconds, String text) {}

  /** Copies. */
  public LoggedTake {
    settings = Collections.unmodifiableMap(new LinkedHashMap<>(settings));
    events = List.copyOf(events);
    pedal = List.copyOf(pedal);
    marks = List.copyOf(marks);
  }

  /** The notes as they were played; those that sounded when the log broke off end there. */
  public List<PlayedNote> notes() {
    return PlayedNotes.of(events, heardSeconds);
  }

  /**
   * Reads a log; every whole line of it counts, wherever it ends and whatever is damaged.
   *
   * @throws UserMistake where the file cannot be read or is no log of ours
   */
  public static LoggedTake recover(Path file) {
    byte[] bytes;
    try (InputStream in = Files.newInputStream(file)) {
      bytes = in.readNBytes(LONGEST_FILE);
    } catch (NoSuchFileException e) {
      throw new UserMistake(file + " is not there; check its name and folder", e);
    } catch (IOException e) {
      throw new UserMistake(
          file + " cannot be read (" + e.getMessage() + "); check its permissions", e);
    }
    Reading reading = new Reading();
    reading.readAll(bytes);
    if (!reading.isOurs && !LogLine.mayBegin(bytes)) {
      throw new UserMistake(
          file + ", line 1: this is no log of a take; give a file that a take left behind");
    }
    return reading.take();
  }

  /** Gathers lines. */
  private static final class Reading {
    private final Map<String, String> settings = new LinkedHashMap<>();
    private Optional<TempoMap> tempo = Optional.empty();
    private final List<PlayEvent> events = new ArrayList<>();
    private final List<PedalMove> pedal = new ArrayList<>();
    private final List<Mark> marks = new ArrayList<>();
    private double heard = Double.NEGATIVE_INFINITY;
    private Optional<Writer> writer = Optional.empty();
    private boolean isOurs;
    private boolean isWhole;
    private int broken;

    void readAll(byte[] bytes) {
      int from = 0;
      for (int at = 0; at < bytes.length; at++) {
        if (bytes[at] == '\n') {
          if (at > from) {
            read(bytes, from, at);
          }
          from = at + 1;
        }
      }
      if (from < bytes.length) {
        broken++;
      }
    }

    private void read(byte[] bytes, int from, int to) {
      Optional<LogLine> line = LogLine.read(bytes, from, to);
      try {
        if (line.isPresent()) {
          isOurs = true;
          take(line.get());
        } else {
          broken++;
        }
      } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
        // Its checksum is right and its content is not: written by another version of ours.
        broken++;
      }
    }

    private void take(LogLine line) {
      String[] parts = line.rest().split(" ", -1);
      switch (line.word()) {
        case TakeLog.FIRST_WORD -> writer = Writer.read(parts);
        case TakeLog.SET -> {
          int equals = line.rest().indexOf('=');
          settings.put(
              LogLine.unescaped(line.rest().substring(0, equals)),
              LogLine.unescaped(line.rest().substring(equals + 1)));
        }
        case TakeLog.TEMPO -> tempo = Optional.of(tempo(parts));
        case TakeLog.ON ->
            hear(
                new NoteOn(
                    seconds(parts[0]),
                    pitch(parts[1]),
                    within(parts[2], -MOST_CENTS, MOST_CENTS),
                    within(parts[3], 0, 1),
                    within(parts[4], 0, 1)));
        case TakeLog.OFF -> hear(new NoteOff(seconds(parts[0]), pitch(parts[1])));
        case TakeLog.PEDAL ->
            pedal.add(new PedalMove(upTo(seconds(parts[0])), parts[1].equals("down")));
        case TakeLog.MARK -> {
          int blank = line.rest().indexOf(' ');
          marks.add(
              new Mark(
                  upTo(seconds(line.rest().substring(0, blank))),
                  LogLine.unescaped(line.rest().substring(blank + 1))));
        }
        case TakeLog.UP_TO -> upTo(seconds(parts[0]));
        case TakeLog.END -> {
          upTo(seconds(parts[0]));
          isWhole = true;
        }
        default -> broken++;
      }
    }

    private void hear(PlayEvent event) {
      events.add(event);
      upTo(event.seconds());
    }

    private double upTo(double seconds) {
      heard = Math.max(heard, seconds);
      return seconds;
    }

    private static TempoMap tempo(String[] parts) {
      List<TempoMap.Point> points = new ArrayList<>();
      for (int i = 0; i + 2 < parts.length; i += 3) {
        points.add(
            new TempoMap.Point(number(parts[i]), number(parts[i + 1]), number(parts[i + 2])));
      }
      return new TempoMap(points);
    }

    private static int pitch(String text) {
      int pitch = Integer.parseInt(text);
      if (pitch < 0 || pitch > 127) {
        throw new IllegalArgumentException("no pitch: " + text);
      }
      return pitch;
    }

    private static double seconds(String text) {
      return within(text, -LONGEST_SECONDS, LONGEST_SECONDS);
    }

    private static double within(String text, double least, double most) {
      double number = number(text);
      if (number < least || number > most) {
        throw new IllegalArgumentException("no take has " + text);
      }
      return number;
    }

    private static double number(String text) {
      double number = Double.parseDouble(text);
      if (!Double.isFinite(number)) {
        throw new IllegalArgumentException("no number: " + text);
      }
      return number;
    }

    LoggedTake take() {
      return new LoggedTake(
          settings,
          tempo,
          events,
          pedal,
          marks,
          heard == Double.NEGATIVE_INFINITY ? 0 : heard,
          writer.isPresent() && writer.get().isAlive(),
          isWhole,
          broken);
    }
  }
}
