package holdfast.listening.midi;

import holdfast.listening.LateOffs;
import holdfast.listening.PlayedNote;
import java.util.Arrays;

/**
 * Turns the messages of one MIDI channel into notes, one message at a time: from a file, from a
 * keyboard, from a take's log, always by the same rules.
 *
 * <ul>
 *   <li>A note lasts as long as its key is down. The sustain pedal only colours the sound: a player
 *       shapes phrases with the fingers, and a pedal held through a whole chorus would leave no
 *       rest to hear.
 *   <li>A key struck again while it is down ends its earlier note, whose note-off may still come
 *       ({@link LateOffs}).
 *   <li>Pitch bend moves a note to where it settles: the middle value of the bend over the time the
 *       key is down, so that scoops, falls and vibrato leave the note where it is meant.
 *   <li>A note that is never ended is ended by {@link #finish}.
 * </ul>
 *
 * <p>Holds no more than one state per key and a bounded history of bends; a message that is neither
 * a note's end nor a bend allocates nothing.
 */
public final class ChannelNotes {

  /** Who hears the notes. */
  public interface Hearer {

    /** A key went down. */
    default void pressed(double seconds, int key, int velocity) {}

    /** The note of this key is over; its pitch may differ from the key by the bend. */
    void ended(int key, PlayedNote note);

    /** The sustain pedal went down or up. */
    default void pedal(double seconds, boolean down) {}
  }

  /** Message kinds: the high half of a status byte (MIDI 1.0). */
  public static final int NOTE_OFF = 0x80;

  /** A key goes down; with velocity 0 it goes up. */
  public static final int NOTE_ON = 0x90;

  /** A controller moves. */
  public static final int CONTROL = 0xB0;

  /** Another sound. */
  public static final int PROGRAM = 0xC0;

  /** The bend wheel moves: 14 bits, low seven first, 8192 in the middle. */
  public static final int PITCH_BEND = 0xE0;

  static final int SUSTAIN = 64;
  static final int ALL_SOUND_OFF = 120;
  static final int RESET_CONTROLLERS = 121;
  static final int ALL_NOTES_OFF = 123;
  static final int DATA_ENTRY = 6;
  static final int DATA_ENTRY_FINE = 38;
  static final int RPN_FINE = 100;
  static final int RPN_COARSE = 101;

  /** Some pads and sequencers end a note at its start; it was struck all the same. */
  static final double SHORTEST_SECONDS = 0.001;

  /** Bend range of a fresh instrument: two semitones each way (MIDI 1.0, RPN 0). */
  static final int DEFAULT_BEND_CENTS = 200;

  private static final int BEND_MIDDLE = 8192;

  private final Hearer hearer;
  private final double[] onset = new double[128];
  private final int[] velocity = new int[128];
  private final LateOffs lateOffs = new LateOffs();
  private final Bends bends = new Bends();
  private int down;
  private int rpn = NO_RPN;
  private int bendRangeCents = DEFAULT_BEND_CENTS;

  private static final int NO_RPN = 0x3FFF;

  /** All keys up, wheel in the middle. */
  public ChannelNotes(Hearer hearer) {
    this.hearer = hearer;
    Arrays.fill(onset, Double.NaN);
  }

  /**
   * Hears one channel message.
   *
   * @param seconds when, not before the last message
   * @param kind its status byte without the channel: one of the constants above; others do no harm
   */
  public void message(double seconds, int kind, int data1, int data2) {
    switch (kind) {
      case NOTE_ON -> {
        if (data2 == 0) {
          release(seconds, data1);
        } else {
          press(seconds, data1, data2);
        }
      }
      case NOTE_OFF -> release(seconds, data1);
      case CONTROL -> control(seconds, data1, data2);
      case PITCH_BEND -> bend(seconds, ((data2 << 7) | data1) - BEND_MIDDLE);
      default -> {
        // Aftertouch, programs and whatever else say nothing about when a note is played.
      }
    }
  }

  /** Whether this key is down. */
  public boolean isDown(int key) {
    return !Double.isNaN(onset[key]);
  }

  /** How many keys are down. */
  public int keysDown() {
    return down;
  }

  /** Ends every note that still sounds, as at the end of a track or when a keyboard goes away. */
  public void finish(double seconds) {
    for (int key = 0; key < 128 && down > 0; key++) {
      if (isDown(key)) {
        end(seconds, key);
      }
    }
    lateOffs.forget();
  }

  private void press(double seconds, int key, int strength) {
    if (isDown(key)) {
      lateOffs.struckAgain(key);
      if (seconds - onset[key] < SHORTEST_SECONDS) {
        // The same note from two sources at once is one note, as loud as the louder.
        velocity[key] = Math.max(velocity[key], strength);
        return;
      }
      end(seconds, key);
    }
    if (down == 0) {
      bends.forget();
    }
    onset[key] = seconds;
    velocity[key] = strength;
    down++;
    hearer.pressed(seconds, key, strength);
  }

  private void release(double seconds, int key) {
    if (isDown(key) && !lateOffs.isLate(key, seconds - onset[key])) {
      end(seconds, key);
    }
  }

  private void end(double seconds, int key) {
    double start = onset[key];
    onset[key] = Double.NaN;
    down--;
    double length = Math.max(seconds - start, SHORTEST_SECONDS);
    double cents = 100.0 * key + bends.settledCents(start, start + length);
    int pitch = Math.max(0, Math.min(127, (int) Math.round(cents / 100)));
    double off = Math.max(-100, Math.min(100, cents - 100.0 * pitch));
    hearer.ended(key, new PlayedNote(start, length, pitch, off, velocity[key] / 127.0, 1));
  }

  private void control(double seconds, int controller, int value) {
    switch (controller) {
      case SUSTAIN -> hearer.pedal(seconds, value >= 64);
      case ALL_SOUND_OFF, ALL_NOTES_OFF -> finish(seconds);
      case RESET_CONTROLLERS -> {
        bend(seconds, 0);
        rpn = NO_RPN;
        hearer.pedal(seconds, false);
      }
      case RPN_COARSE -> rpn = (value << 7) | (rpn & 0x7F);
      case RPN_FINE -> rpn = (rpn & 0x3F80) | value;
      case 98, 99 -> rpn = NO_RPN; // a parameter of the maker's own
      case DATA_ENTRY -> {
        if (rpn == 0) {
          bendRangeCents = 100 * value + bendRangeCents % 100;
        }
      }
      case DATA_ENTRY_FINE -> {
        if (rpn == 0) {
          bendRangeCents = bendRangeCents / 100 * 100 + Math.min(value, 99);
        }
      }
      default -> {
        // Volume, modulation and the rest do not change when or what is played.
      }
    }
  }

  private void bend(double seconds, int value) {
    bends.move(seconds, (double) value * bendRangeCents / BEND_MIDDLE);
  }
}
