package holdfast.bench.listening;

import java.io.File;
import java.io.IOException;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Soundbank;
import javax.sound.midi.Synthesizer;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;

/** The JDK's synthesizer as a studio: it plays lines and backings into arrays, with no device. */
final class Instruments {

  private static final int RATE = Clip.RATE;

  private Instruments() {}

  /**
   * One key press.
   *
   * @param start seconds
   * @param end seconds
   * @param channel MIDI channel 0 to 15
   * @param midi pitch
   * @param velocity 1 to 127
   */
  record Press(double start, double end, int channel, int midi, int velocity) {}

  /** Renders presses to mono; programs by channel, 0 to 127. */
  static float[] render(
      List<Press> presses, Map<Integer, Integer> programs, double seconds, Optional<File> sounds)
      throws IOException {
    try {
      Synthesizer synth = MidiSystem.getSynthesizer();
      Class<?> open = Class.forName("com.sun.media.sound.AudioSynthesizer");
      Method openStream = open.getMethod("openStream", AudioFormat.class, Map.class);
      AudioFormat format = new AudioFormat(RATE, 16, 2, true, false);
      Map<String, Object> options = new HashMap<>();
      options.put("reverb", false);
      options.put("chorus", false);
      options.put("max polyphony", 64);
      AudioInputStream stream = (AudioInputStream) openStream.invoke(synth, format, options);
      if (sounds.isPresent()) {
        Soundbank bank = MidiSystem.getSoundbank(sounds.get());
        synth.unloadAllInstruments(synth.getDefaultSoundbank());
        synth.loadAllInstruments(bank);
      }
      try (Receiver receiver = synth.getReceiver();
          stream) {
        for (Map.Entry<Integer, Integer> program : programs.entrySet()) {
          receiver.send(
              new ShortMessage(
                  ShortMessage.PROGRAM_CHANGE, program.getKey(), program.getValue(), 0),
              0);
        }
        record Timed(double at, ShortMessage message) {}
        List<Timed> all = new ArrayList<>();
        for (Press p : presses) {
          all.add(
              new Timed(
                  p.start(),
                  new ShortMessage(ShortMessage.NOTE_ON, p.channel(), p.midi(), p.velocity())));
          all.add(
              new Timed(
                  p.end(), new ShortMessage(ShortMessage.NOTE_OFF, p.channel(), p.midi(), 0)));
        }
        all.sort(Comparator.comparingDouble(Timed::at));
        for (Timed timed : all) {
          receiver.send(timed.message(), Math.round(timed.at() * 1e6));
        }
        float[] mono = new float[(int) (seconds * RATE)];
        byte[] block = new byte[4096];
        int filled = 0;
        while (filled < mono.length) {
          int got = stream.read(block);
          if (got <= 0) {
            break;
          }
          for (int b = 0; b + 3 < got && filled < mono.length; b += 4) {
            int left = (short) ((block[b] & 0xff) | block[b + 1] << 8);
            int right = (short) ((block[b + 2] & 0xff) | block[b + 3] << 8);
            mono[filled++] = (left + right) / 65536f;
          }
        }
        return mono;
      }
    } catch (ReflectiveOperationException | MidiUnavailableException | InvalidMidiDataException e) {
      throw new IOException("the synthesizer cannot be opened into a file", e);
    }
  }

  /** A line on one instrument; the truth ends where the sound has died away. */
  static Clip play(
      String name, String who, int program, List<Line.Sung> line, Optional<File> sounds)
      throws IOException {
    List<Press> presses = new ArrayList<>();
    for (int k = 0; k < line.size(); k++) {
      Line.Sung note = line.get(k);
      boolean followed = k + 1 < line.size() && line.get(k + 1).joined();
      double gap = followed ? 0.03 : 0.05;
      presses.add(new Press(note.start(), note.end() - gap, 0, note.midi(), 70 + (k * 37) % 45));
    }
    double seconds = line.get(line.size() - 1).end() + 0.8;
    List<float[]> parts = oneVoice(presses, program, seconds, sounds);
    float[] samples = new float[(int) (seconds * RATE)];
    double[] hz = new double[(int) (seconds / Clip.FRAME_SECONDS)];
    double[] loudest = new double[hz.length];
    List<TrueNote> notes = new ArrayList<>();
    for (int k = 0; k < presses.size(); k++) {
      Press press = presses.get(k);
      float[] part = parts.get(k);
      int from = (int) (press.start() * RATE);
      for (int i = 0; i < part.length && from + i < samples.length; i++) {
        samples[from + i] += part[i];
      }
      double pitch = 440 * Math.pow(2, (press.midi() - 69) / 12.0);
      double held = press.end() - press.start();
      double peak = 0;
      for (double t = 0; t < held; t += 0.005) {
        peak = Math.max(peak, level(part, t));
      }
      double onset = -1;
      double end = held;
      for (double t = 0; t < (double) part.length / RATE; t += 0.005) {
        double level = level(part, t);
        if (onset < 0 && level > peak * 0.1) {
          onset = t;
        }
        boolean sounding = onset >= 0 && level > peak * (t < held ? 0.05 : 0.1);
        if (sounding) {
          end = Math.max(end, t);
        }
      }
      for (int f = (int) Math.ceil(press.start() / Clip.FRAME_SECONDS); f < hz.length; f++) {
        double t = f * Clip.FRAME_SECONDS - press.start();
        double level = t * RATE < part.length ? level(part, t) : 0;
        boolean sounding = t >= onset && level > peak * (t < held ? 0.05 : 0.1);
        // While one note fades under the next, the louder of the two is what is heard.
        if (sounding && level > loudest[f]) {
          loudest[f] = level;
          hz[f] = pitch;
        }
      }
      double began = press.start() + Math.max(0, onset);
      notes.add(new TrueNote(began, press.start() + end, pitch));
    }
    return new Clip(name, who, samples, hz, notes, Optional.empty());
  }

  /**
   * A player has one breath or one string: when a note begins, the one before fades within 25 ms.
   * Every other note is rendered by itself, since the synthesizer lets them ring into each other.
   * Gives each note's own sound from its press on, so that its onset can be measured on it alone.
   */
  private static List<float[]> oneVoice(
      List<Press> presses, int program, double seconds, Optional<File> sounds) throws IOException {
    List<float[]> parts = new ArrayList<>(presses.stream().map(p -> new float[0]).toList());
    for (int parity = 0; parity < 2; parity++) {
      List<Press> mine = new ArrayList<>();
      for (int k = parity; k < presses.size(); k += 2) {
        mine.add(presses.get(k));
      }
      float[] all = render(mine, Map.of(0, program), seconds, sounds);
      for (int k = parity; k < presses.size(); k += 2) {
        int from = (int) (presses.get(k).start() * RATE);
        int until = k + 1 < presses.size() ? (int) (presses.get(k + 1).start() * RATE) : all.length;
        int next = k + 2 < presses.size() ? (int) (presses.get(k + 2).start() * RATE) : all.length;
        float[] part = Arrays.copyOfRange(all, from, Math.min(next, all.length));
        for (int i = 0; i < part.length; i++) {
          part[i] *= (float) Math.max(0, Math.min(1, 1 - (from + i - until) / (0.025 * RATE)));
        }
        parts.set(k, part);
      }
    }
    return parts;
  }

  /** Level in the 10 ms around a time. */
  private static double level(float[] samples, double t) {
    int from = Math.max(0, (int) ((t - 0.005) * RATE));
    int to = Math.min(samples.length, from + RATE / 100);
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += samples[i] * samples[i];
    }
    return Math.sqrt(sum / Math.max(1, to - from));
  }

  /** A backing's band: General MIDI 1.0 programs, and the lowest pitch of the chords. */
  record Band(int chords, int bass, int lowest) {

    /** Piano and double bass. */
    static final Band TRIO = new Band(0, 32, 48);
  }

  /** Chords, a bass and a soft ride: a chord a bar. */
  static float[] backing(long seed, double seconds, Band band, Optional<File> sounds)
      throws IOException {
    java.util.Random random = new java.util.Random(seed);
    List<Press> presses = new ArrayList<>();
    double beat = 60.0 / (60 + random.nextInt(50));
    int[][] kinds = {{0, 4, 7, 11}, {0, 3, 7, 10}, {0, 4, 7, 10}, {0, 3, 6, 10}};
    int root = random.nextInt(12);
    for (double bar = 0.05; bar < seconds; bar += 4 * beat) {
      int[] kind = kinds[random.nextInt(kinds.length)];
      for (int b = 0; b < 4; b++) {
        double t = bar + b * beat;
        int bassTone = kind[b % 4 == 3 ? 2 : (b % 2) * 2];
        presses.add(new Press(t, t + beat * 0.9, 1, 36 + (root + bassTone) % 12, 90));
        presses.add(new Press(t, t + 0.1, 9, 51, 50));
        if (b == 0 || random.nextDouble() < 0.4) {
          double late = b == 0 ? 0 : beat * 0.5 * random.nextInt(2);
          for (int tone : kind) {
            int pitch = band.lowest() + (root + tone) % 12 + (tone > 6 ? 12 : 0);
            presses.add(new Press(t + late, t + beat * 1.8, 2, pitch, 75));
          }
        }
      }
      root = (root + 5) % 12;
    }
    return render(presses, Map.of(1, band.bass(), 2, band.chords()), seconds, sounds);
  }
}
