package holdfast.listening.keyboard;

import javax.sound.midi.Receiver;

/** What lies between a keyboard and the ear, and may be pulled. */
interface Cable {

  /** What the keyboard is called. */
  String name();

  /** Whether the keyboard is plugged in at this moment. */
  boolean isPlugged();

  /** Whether it is connected, and still gives something. */
  boolean isConnected();

  /** Connects it to the receiver; tells whether that worked. */
  boolean connect(Receiver receiver);

  /** Lets go of it. */
  void disconnect();
}
