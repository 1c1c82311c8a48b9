package holdfast.backing.sound;

import holdfast.time.ClockFit;
import java.util.Optional;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Synthesizer;
import javax.sound.midi.SysexMessage;

/**
 * The system's synthesizer with a line of its own choosing, for a Java that does not let us draw
 * its samples. Stamps work as they do in our own line; the latency is the synthesizer's, mostly 120
 * ms.
 */
final class SelfPlayingSynth implements SoundOut {

  private final Synthesizer synthesizer;
  private final Receiver receiver;
  private final SoundBank bank;
  private final long latencyNanos;
  private final ClockFit fit;

  private SelfPlayingSynth(
      Synthesizer synthesizer, Receiver receiver, SoundBank bank, long latencyNanos) {
    this.synthesizer = synthesizer;
    this.receiver = receiver;
    this.bank = bank;
    this.latencyNanos = latencyNanos;
    this.fit = new ClockFit(synthesizer.getMicrosecondPosition(), System.nanoTime());
  }

  /** Opens the system's synthesizer; empty where it has no device to play on. */
  static Optional<SoundOut> open(SoundBank bank, double volume, long latencyNanos) {
    try {
      Synthesizer synthesizer = MidiSystem.getSynthesizer();
      synthesizer.open();
      bank.loadInto(synthesizer);
      SelfPlayingSynth out =
          new SelfPlayingSynth(synthesizer, synthesizer.getReceiver(), bank, latencyNanos);
      out.setVolume(volume);
      return Optional.of(out);
    } catch (MidiUnavailableException | IllegalArgumentException | SecurityException e) {
      return Optional.empty();
    }
  }

  private synchronized void look() {
    fit.observe(synthesizer.getMicrosecondPosition(), System.nanoTime());
  }

  @Override
  public void send(ShortMessage message, long positionMicros) {
    look();
    if (message.getCommand() == ShortMessage.PROGRAM_CHANGE) {
      bank.loadProgram(synthesizer, message.getData1());
    }
    receiver.send(message, Math.max(0, positionMicros));
  }

  @Override
  public long madeMicros() {
    return synthesizer.getMicrosecondPosition();
  }

  @Override
  public long nanoTimeToSend(long positionMicros) {
    look();
    return fit.nanoTimeAt(positionMicros - SEND_AHEAD_MICROS);
  }

  @Override
  public long nanoTimeHeard(long positionMicros) {
    return fit.nanoTimeAt(positionMicros) + synthesizer.getLatency() * 1000 + latencyNanos;
  }

  @Override
  public long microsHeard(long nanoTime) {
    return fit.microsAt(nanoTime - synthesizer.getLatency() * 1000 - latencyNanos);
  }

  @Override
  public void silence(int channel) {
    receiver.send(Messages.channelVolume(channel, 0), -1);
    receiver.send(Messages.allSoundOff(channel), -1);
    receiver.send(Messages.allSoundOff(channel), madeMicros() + SEND_AHEAD_MICROS);
  }

  @Override
  public void setVolume(double volume) {
    // MIDI 1.0, universal real-time message "master volume": 14 bits, the lower seven first.
    int level = (int) Math.round(Math.max(0, Math.min(1, volume)) * 0x3FFF);
    byte[] message = {
      (byte) 0xF0, 0x7F, 0x7F, 4, 1, (byte) (level & 0x7F), (byte) (level >> 7), (byte) 0xF7
    };
    try {
      receiver.send(new SysexMessage(message, message.length), madeMicros());
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException("a master volume message is always valid", e);
    }
  }

  @Override
  public String name() {
    return "the system's synthesizer";
  }

  @Override
  public Optional<String> trouble() {
    return Optional.empty();
  }

  @Override
  public int gaps() {
    return fit.jumps();
  }

  @Override
  public void close() {
    receiver.close();
    synthesizer.close();
  }
}
