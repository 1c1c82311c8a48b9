package holdfast.motif;

import holdfast.melody.Note;
import holdfast.theory.SpelledPitch;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Reads the tables of others' examples: fields between semicolons, remarks after {@code #}. */
final class ReferenceNotes {

  private ReferenceNotes() {}

  static List<List<String>> rows(String file) {
    List<List<String>> rows = new ArrayList<>();
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                ReferenceNotes.class.getResourceAsStream("/reference/" + file),
                StandardCharsets.UTF_8))) {
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        if (!line.startsWith("#") && !line.isBlank()) {
          List<String> fields = new ArrayList<>();
          for (String field : line.split(";", -1)) {
            fields.add(field.strip());
          }
          rows.add(List.copyOf(fields));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }

  /** Notes from names ("G4 A4") and a rhythm ("onset duration onset duration"). */
  static List<Note> notes(String names, String rhythm) {
    String[] name = names.split(" ", -1);
    String[] time = rhythm.split(" ", -1);
    List<Note> notes = new ArrayList<>();
    for (int i = 0; i < name.length; i++) {
      notes.add(
          new Note(
              Double.parseDouble(time[2 * i]),
              Double.parseDouble(time[2 * i + 1]),
              SpelledPitch.parse(name[i]).midi()));
    }
    return notes;
  }
}
