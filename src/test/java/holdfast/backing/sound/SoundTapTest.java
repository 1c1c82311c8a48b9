package holdfast.backing.sound;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** What was sent to the device can be read again, and nothing else. */
class SoundTapTest {

  @Test
  void what_was_sent_is_read_and_what_was_not_is_silence() {
    SoundTap tap = new SoundTap();
    // 16-bit little-endian stereo: left 16384 and right 0 add up to a quarter of full scale.
    tap.write(new byte[] {0, 0x40, 0, 0, 0, (byte) 0xC0, 0, 0});
    assertEquals(2, tap.made());
    float[] read = {9, 9, 9, 9, 9};
    tap.copy(-1, read, 5);
    assertArrayEquals(new float[] {0, 0.25f, -0.25f, 0, 0}, read);
  }

  @Test
  void what_is_long_past_is_silence() {
    SoundTap tap = new SoundTap();
    byte[] loud = new byte[4 * 44_100];
    java.util.Arrays.fill(loud, (byte) 0x11);
    for (int second = 0; second < 10; second++) {
      tap.write(loud);
    }
    float[] read = new float[1];
    tap.copy(0, read, 1);
    assertEquals(0, read[0]);
    tap.copy(tap.made() - 44_100, read, 1);
    assertEquals(0x1111 / 32768f, read[0], 1e-6);
  }
}
