/**
 * Who sings or plays here, and through which devices?
 *
 * <p>Conventions: sounding MIDI pitches, C4 = 60; decibels under full scale; milliseconds of delay
 * from a sound's leaving the computer to its being heard again.
 *
 * <p>Profiles ship as text in {@code calibration/}, each value with its reason or source. What is
 * measured on this machine is stored per pair of devices in the user's own folder.
 */
package holdfast.listening.calibration;
