package holdfast.command;

import com.fasterxml.jackson.databind.JsonNode;
import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Notes, numbers and words as the line-by-line commands read them, with the mend in each error. */
final class JsonNotes {

  private JsonNotes() {}

  /** {@code [[onsetBeats, durationBeats, midiPitch], …]}, at least one note, in order of onset. */
  static List<Note> beats(JsonNode line, String field) {
    List<Note> notes = new ArrayList<>();
    for (double[] triple : triples(line, field)) {
      notes.add(new Note(triple[0], triple[1], wholePitch(triple[2], field)));
    }
    return notes;
  }

  /** {@code [[onsetSeconds, durationSeconds, midiPitch], …]}, at least one, in order of onset. */
  static List<PlayedNote> seconds(JsonNode line, String field) {
    List<PlayedNote> notes = new ArrayList<>();
    for (double[] triple : triples(line, field)) {
      int pitch = wholePitch(triple[2], field);
      notes.add(new PlayedNote(triple[0], triple[1], pitch, 0, 0.5, 1));
    }
    return notes;
  }

  /** A word that may be missing. */
  static Optional<String> word(JsonNode line, String field) {
    JsonNode node = line.path(field);
    if (node.isMissingNode() || node.isNull()) {
      return Optional.empty();
    }
    if (!node.isTextual()) {
      throw new IllegalArgumentException("\"" + field + "\" must be a word in quotes");
    }
    return Optional.of(node.textValue());
  }

  /** A number that may be missing. */
  static Optional<Double> number(JsonNode line, String field) {
    JsonNode node = line.path(field);
    if (node.isMissingNode() || node.isNull()) {
      return Optional.empty();
    }
    if (!node.isNumber()) {
      throw new IllegalArgumentException("\"" + field + "\" must be a number");
    }
    return Optional.of(node.doubleValue());
  }

  private static List<double[]> triples(JsonNode line, String field) {
    JsonNode array = line.path(field);
    if (!array.isArray() || array.isEmpty()) {
      throw new IllegalArgumentException(
          "\"" + field + "\" must be a list of notes, as [[onset, duration, midiPitch], …]");
    }
    List<double[]> triples = new ArrayList<>(array.size());
    double previous = Double.NEGATIVE_INFINITY;
    for (JsonNode note : array) {
      String place = "note " + (triples.size() + 1) + " of \"" + field + "\"";
      if (!note.isArray() || note.size() != 3) {
        throw new IllegalArgumentException(place + " must be [onset, duration, midiPitch]");
      }
      double[] triple = new double[3];
      for (int i = 0; i < 3; i++) {
        if (!note.get(i).isNumber()) {
          throw new IllegalArgumentException(place + " must hold three numbers");
        }
        triple[i] = note.get(i).doubleValue();
      }
      if (!(triple[1] > 0) || !Double.isFinite(triple[1]) || !Double.isFinite(triple[0])) {
        throw new IllegalArgumentException(
            place + " must start at a finite time and last longer than 0");
      }
      if (triple[0] < previous) {
        throw new IllegalArgumentException(
            place + " starts before the one in front; sort by onset");
      }
      previous = triple[0];
      triples.add(triple);
    }
    return triples;
  }

  private static int wholePitch(double pitch, String field) {
    double whole = Math.rint(pitch);
    if (whole < 0 || whole > 127 || Double.isNaN(whole)) {
      throw new IllegalArgumentException(
          "a pitch of \"" + field + "\" must be a MIDI note number 0 to 127, not " + pitch);
    }
    return (int) whole;
  }
}
