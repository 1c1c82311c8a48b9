package holdfast.command;

import holdfast.backing.BackingAudio;
import holdfast.backing.BackingMidi;
import holdfast.backing.Performance;
import holdfast.backing.sound.SoundBank;
import holdfast.chart.MelodySheet;
import holdfast.chart.MusicXmlMelody;
import holdfast.disk.WholeFile;
import holdfast.mistake.UserMistake;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Supplier;

/** A line over a backing as a file; the ending of its name says which kind. */
final class LineFile {

  private LineFile() {}

  /**
   * Writes the file, whole or not at all.
   *
   * @param performance the backing with the line
   * @param sheet the line as it is written
   * @param bank opens the instruments, where they are needed
   * @throws UserMistake where the name has no ending that we know, or the file cannot be written
   */
  static void write(
      Path file, Performance performance, MelodySheet sheet, Supplier<SoundBank> bank) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".mid") || name.endsWith(".midi")) {
      BackingMidi.write(performance, file);
    } else if (name.endsWith(".musicxml") || name.endsWith(".xml")) {
      WholeFile.write(file, MusicXmlMelody.write(sheet));
    } else if (name.endsWith(".wav")) {
      BackingAudio.write(performance, bank.get(), file);
    } else {
      throw new UserMistake(
          file + " must end in .mid, .musicxml or .wav, so that we know what to write");
    }
  }
}
