package holdfast.listening.keyboard;

import java.util.concurrent.locks.LockSupport;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;

/**
 * The end of the cable: stamps each note message with the time of its arrival and queues it. Clock,
 * active sensing, aftertouch, bends and system messages are let pass: they say nothing about which
 * key went down, and may come by the thousand.
 */
final class StampingReceiver implements Receiver {

  private final EventRing ring;
  private volatile Thread waiting = Thread.currentThread();
  private volatile boolean closed;

  StampingReceiver(EventRing ring) {
    this.ring = ring;
  }

  @Override
  public void send(MidiMessage message, long deviceStamp) {
    long now = System.nanoTime();
    if (closed || !(message instanceof ShortMessage note)) {
      return;
    }
    int command = note.getCommand();
    if (command == ShortMessage.NOTE_ON || command == ShortMessage.NOTE_OFF) {
      ring.offer(now, note.getStatus(), note.getData1(), note.getData2());
      LockSupport.unpark(waiting);
    }
  }

  /** Names the thread to be woken when something arrives. */
  void wake(Thread session) {
    waiting = session;
  }

  @Override
  public void close() {
    closed = true;
  }
}
