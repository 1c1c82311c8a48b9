package holdfast.command;

import holdfast.listening.midi.BarOne;
import holdfast.listening.midi.LineChoice;
import holdfast.listening.midi.MidiTakeFile;
import holdfast.listening.midi.RecordedTake;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.time.Metre;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;

/** An idea as an option gives it: notes on one line, or a MIDI file that holds nothing else. */
final class GivenIdea {

  /** More notes than this are a tune. */
  private static final int MOST_NOTES = 32;

  private GivenIdea() {}

  /**
   * The notes, beat 0 at the idea's bar line.
   *
   * @throws UserMistake where it is neither
   */
  static List<Note> read(String text, Metre metre, double beatsPerMinute) {
    List<Note> notes = isFile(text) ? file(text, metre, beatsPerMinute) : line(text);
    if (notes.size() < 2 || notes.size() > MOST_NOTES) {
      throw new UserMistake(
          "an idea has 2 to " + MOST_NOTES + " notes, and this one has " + notes.size());
    }
    return notes;
  }

  private static List<Note> line(String text) {
    try {
      return IdeaNotation.parse(text);
    } catch (IllegalArgumentException e) {
      throw new UserMistake("--idea: " + e.getMessage(), e);
    }
  }

  private static List<Note> file(String name, Metre metre, double beatsPerMinute) {
    RecordedTake take = MidiTakeFile.read(Path.of(name));
    LineChoice line = LineChoice.byItself(take);
    return new BarOne(metre, beatsPerMinute)
        .of(take, line.line(), OptionalDouble.empty())
        .notes(line.line());
  }

  private static boolean isFile(String text) {
    try {
      return Files.isRegularFile(Path.of(text)) || text.endsWith(".mid") || text.endsWith(".midi");
    } catch (InvalidPathException notAPath) {
      return false;
    }
  }
}
