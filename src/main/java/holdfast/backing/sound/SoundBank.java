package holdfast.backing.sound;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.sound.midi.Instrument;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Soundbank;
import javax.sound.midi.Synthesizer;

/**
 * The instruments that a synthesizer plays: the JDK's own, or a SoundFont 2 or DLS file of the
 * user's. Where the user's bank lacks an instrument the JDK's own takes its place; where the JDK
 * ships without a bank, it makes a small one up, and that works too.
 *
 * <p>Of a file, only the instruments that are played are read into memory: such files can be larger
 * than the heap.
 */
public final class SoundBank {

  /**
   * The first twelve bytes of a RIFF file tell its kind, the last four of them (SoundFont 2.04).
   */
  private static final int HEAD = 12;

  private static final List<String> KINDS = List.of("sfbk", "DLS ");

  private final String name;
  private final Optional<Soundbank> own;

  private SoundBank(String name, Optional<Soundbank> own) {
    this.name = name;
    this.own = own;
  }

  /** The bank that comes with Java. */
  public static SoundBank builtIn() {
    return new SoundBank("Java's own instruments", Optional.empty());
  }

  /**
   * The bank in this file.
   *
   * @throws UserMistake where the file is missing or is no SoundFont 2 or DLS bank
   */
  public static SoundBank read(Path file) {
    try {
      requireKind(file);
      Soundbank bank = MidiSystem.getSoundbank(file.toFile());
      if (bank.getInstruments().length == 0) {
        throw new UserMistake(file + " holds no instruments; choose another SoundFont");
      }
      return new SoundBank(file.getFileName().toString(), Optional.of(bank));
    } catch (InvalidMidiDataException | IOException e) {
      throw broken(file, e);
    } catch (IndexOutOfBoundsException | IllegalArgumentException | NullPointerException e) {
      // The JDK's readers trust the lengths in the file.
      throw broken(file, e);
    }
  }

  private static UserMistake broken(Path file, Exception cause) {
    return new UserMistake(
        file + " is damaged or cut short; fetch it again or choose another SoundFont", cause);
  }

  private static void requireKind(Path file) {
    byte[] head;
    try (InputStream in = Files.newInputStream(file)) {
      head = in.readNBytes(HEAD);
    } catch (IOException e) {
      throw new UserMistake(
          "the SoundFont " + file + " cannot be read; check its name and place", e);
    }
    String text = new String(head, StandardCharsets.ISO_8859_1);
    if (!text.startsWith("RIFF") || !KINDS.contains(text.substring(text.length() - 4))) {
      throw new UserMistake(
          file + " is not a sound bank; give a SoundFont 2 (.sf2) or a DLS (.dls) file");
    }
  }

  /** What it is called. */
  public String name() {
    return name;
  }

  /**
   * Gives the synthesizer this bank's drums; the other instruments follow as they are asked for.
   */
  void loadInto(Synthesizer synthesizer) {
    own.flatMap(bank -> find(bank, 0, true)).ifPresent(synthesizer::loadInstrument);
  }

  /** Makes sure that this instrument of General MIDI, 0 to 127, can be played. */
  void loadProgram(Synthesizer synthesizer, int program) {
    own.flatMap(bank -> find(bank, program, false)).ifPresent(synthesizer::loadInstrument);
  }

  private static Optional<Instrument> find(Soundbank bank, int program, boolean drums) {
    return Arrays.stream(bank.getInstruments())
        .filter(instrument -> isDrums(instrument) == drums)
        .filter(instrument -> instrument.getPatch().getProgram() == program)
        .min(java.util.Comparator.comparingInt(instrument -> instrument.getPatch().getBank()));
  }

  private static boolean isDrums(Instrument instrument) {
    // The JDK tells drums only in a class that it does not export, and in this word.
    return instrument.toString().startsWith("Drumkit");
  }
}
