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

  /** The sample at a place of a little-endian buffer, full scale ±1; broken numbers are silence. */
  float read(ByteBuffer buffer, int at) {
    float value =
        switch (this) {
          case UNSIGNED_8 -> ((buffer.get(at) & 0xff) - 128) / 128f;
          case SIGNED_16 -> buffer.getShort(at) / 32768f;
          case SIGNED_24 ->
              ((buffer.get(at) & 0xff)
                      | (buffer.get(at + 1) & 0xff) << 8
                      | buffer.get(at + 2) << 16)
                  / 8388608f;
          case SIGNED_32 -> buffer.getInt(at) / 0x1p31f;
          case FLOAT_32 -> buffer.getFloat(at);
          case FLOAT_64 -> (float) buffer.getDouble(at);
        };
    return Float.isFinite(value) ? Math.max(-LOUDEST, Math.min(LOUDEST, value)) : 0;
  }

  /** Floats may go past full scale; past this they are broken, and would drown all else. */
  private static final float LOUDEST = 8;
}
