package holdfast.listening.microphone;

import holdfast.mistake.UserMistake;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;

/** The devices of this machine that can be recorded from, by plain names. */
final class Devices {

  /** What Linux calls "default", and people do not. */
  private static final String SYSTEMS_OWN = "the system's microphone";

  /**
   * Room in the device, as time: what comes in is fetched at once, and a machine that is busy for
   * 80 ms loses nothing.
   */
  private static final double LINE_SECONDS = 0.08;

  /** What sound cards give comes first; what only headsets or studios give comes last. */
  private static final float[] RATES = {48_000, 44_100, 96_000, 88_200, 32_000, 16_000};

  private static final int FLOAT_BITS = 32;

  private Devices() {}

  /** By plain name, the system's own choice first. */
  static Map<String, Mixer.Info> all() {
    Map<String, Mixer.Info> all = new LinkedHashMap<>();
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      if (records(info)) {
        String plain = plainName(info.getName());
        // Two sockets of one sound card differ only by what stands in brackets.
        all.putIfAbsent(all.containsKey(plain) ? info.getName().strip() : plain, info);
      }
    }
    return all;
  }

  /**
   * Linux puts the port in brackets behind the name ("Desk [plughw:1,0]"); people need the name.
   */
  static String plainName(String name) {
    String plain = name.replaceAll("\\s*\\[[^]]*]\\s*$", "").strip();
    return plain.equals("default") ? SYSTEMS_OWN : plain.isEmpty() ? name.strip() : plain;
  }

  /**
   * Opens a device in the best format that it has.
   *
   * @param words its plain name, or part of it in any case; empty for the system's own choice
   * @throws UserMistake when it is missing, busy or of the wrong kind
   */
  static TargetDataLine open(String words) {
    Map<String, Mixer.Info> all = all();
    String wanted = words.strip().toLowerCase(Locale.ROOT);
    for (Map.Entry<String, Mixer.Info> device : all.entrySet()) {
      if (device.getKey().toLowerCase(Locale.ROOT).contains(wanted)) {
        return open(device.getKey(), AudioSystem.getMixer(device.getValue()));
      }
    }
    throw new UserMistake(missing(words, all));
  }

  private static String missing(String words, Map<String, Mixer.Info> all) {
    if (all.isEmpty()) {
      return "no microphone is connected; plug one in, or play on a MIDI keyboard instead";
    }
    return "there is no microphone \""
        + words
        + "\"; there are: "
        + String.join(", ", all.keySet());
  }

  private static TargetDataLine open(String name, Mixer mixer) {
    boolean busy = false;
    for (AudioFormat format : formats()) {
      DataLine.Info wanted = new DataLine.Info(TargetDataLine.class, format);
      if (!mixer.isLineSupported(wanted)) {
        continue;
      }
      try {
        TargetDataLine line = (TargetDataLine) mixer.getLine(wanted);
        int frames = (int) (format.getSampleRate() * LINE_SECONDS);
        line.open(format, frames * format.getFrameSize());
        return line;
      } catch (LineUnavailableException | SecurityException next) {
        // Another format may still be had.
        busy = true;
      } catch (IllegalArgumentException next) {
        // It said that it knows this format, and does not.
      }
    }
    throw new UserMistake(
        busy
            ? "the microphone \""
                + name
                + "\" is busy; close the program that uses it, or allow this one to listen in the"
                + " system's settings"
            : "the microphone \""
                + name
                + "\" gives sound in a form that I cannot take; set it to 48 or 44.1 kHz and 16"
                + " bits in the system's sound settings, or choose another microphone");
  }

  /** A device that records at all, in whatever format. */
  private static boolean records(Mixer.Info info) {
    return AudioSystem.getMixer(info)
        .isLineSupported(new javax.sound.sampled.Line.Info(TargetDataLine.class));
  }

  /** From the most wanted on: bits, then rates, then channels. */
  private static List<AudioFormat> formats() {
    List<AudioFormat> formats = new ArrayList<>();
    for (int bits : new int[] {16, 24}) {
      for (float rate : RATES) {
        for (int channels : new int[] {1, 2}) {
          formats.add(new AudioFormat(rate, bits, channels, true, false));
        }
      }
    }
    for (float rate : RATES) {
      for (int channels : new int[] {1, 2}) {
        int frame = channels * FLOAT_BITS / Byte.SIZE;
        formats.add(
            new AudioFormat(
                AudioFormat.Encoding.PCM_FLOAT, rate, FLOAT_BITS, channels, frame, rate, false));
      }
    }
    return formats;
  }
}
