package holdfast.listening.audio;

import java.nio.ByteBuffer;

/** How one sample is written in a file: the kinds that WAVE (and PCM streams) know. */
enum SampleFormat {
  /** 8 bits, unsigned, 128 is silence. */
  UNSIGNED_8(1),
  /** 16 bits, signed. */
  SIGNED_16(2),
  /** 24 bits, signed. */
  SIGNED_24(3),
  /** 32 bits, signed. */
  SIGNED_32(4),
  /** IEEE 754, 32 bits. */
  FLOAT_32(4),
  /** IEEE 754, 64 bits. */
  FLOAT_64(8);

  private final int bytes;

  SampleFormat(int bytes) {
    this.bytes = bytes;
  }

  int bytes() {
    return bytes;
  }

  /**
   * Reads one channel, full scale ±1; broken numbers are silence.
   *
   * @param buffer little-endian, frame by frame from its start
   * @param channels samples in a frame
   * @param channel which of them, from 0
   * @param to where they go
   * @param frames how many
   */
  void read(ByteBuffer buffer, int channels, int channel, float[] to, int frames) {
    int step = bytes * channels;
    int at = bytes * channel;
    // A loop for each kind, since a choice for each sample takes longer than the reading.
    switch (this) {
      case UNSIGNED_8 -> {
        for (int i = 0; i < frames; i++, at += step) {
          to[i] = ((buffer.get(at) & 0xff) - 128) / 128f;
        }
      }
      case SIGNED_16 -> {
        for (int i = 0; i < frames; i++, at += step) {
          to[i] = buffer.getShort(at) / 32768f;
        }
      }
      case SIGNED_24 -> {
        for (int i = 0; i < frames; i++, at += step) {
          int low = (buffer.get(at) & 0xff) | (buffer.get(at + 1) & 0xff) << 8;
          to[i] = (low | buffer.get(at + 2) << 16) / 8388608f;
        }
      }
      case SIGNED_32 -> {
        for (int i = 0; i < frames; i++, at += step) {
          to[i] = buffer.getInt(at) / 0x1p31f;
        }
      }
      case FLOAT_32 -> {
        for (int i = 0; i < frames; i++, at += step) {
          to[i] = sound(buffer.getFloat(at));
        }
      }
      case FLOAT_64 -> {
        for (int i = 0; i < frames; i++, at += step) {
          to[i] = sound((float) buffer.getDouble(at));
        }
      }
    }
  }

  private static float sound(float value) {
    return Float.isFinite(value) ? Math.max(-LOUDEST, Math.min(LOUDEST, value)) : 0;
  }

  /** Floats may go past full scale; past this they are broken, and would drown all else. */
  private static final float LOUDEST = 8;
}
