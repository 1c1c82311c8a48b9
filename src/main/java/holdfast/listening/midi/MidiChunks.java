package holdfast.listening.midi;

import java.util.ArrayList;
import java.util.List;

/**
 * The outside of a Standard MIDI File: its header and where its tracks lie. RIFF-wrapped files
 * (.rmi) are unwrapped; chunks of other kinds are passed over, as the standard asks.
 *
 * @param format 0 (one track) or 1 (several, played together)
 * @param declaredTracks the header's count, which may be wrong
 * @param division what a tick is
 * @param tracks in the order of the file
 * @param remarks what was amiss and could be mended
 */
record MidiChunks(
    int format,
    int declaredTracks,
    Division division,
    List<TrackChunk> tracks,
    List<String> remarks) {

  /**
   * Where a track's events lie.
   *
   * @param number from 1
   * @param from offset of its first event
   * @param to offset behind its last byte that is there
   * @param promisedTo offset behind its last byte by its header; beyond {@code to} in a cut file
   */
  record TrackChunk(int number, int from, int to, long promisedTo) {
    boolean isCut() {
      return promisedTo > to;
    }
  }

  private static final String EXPORT_AGAIN =
      "export it again as a Standard MIDI File of format 0 or 1";

  /** Reads the outside of the file that holds these bytes. */
  static MidiChunks of(String file, byte[] bytes) {
    if (bytes.length == 0) {
      throw MidiFileException.of(file, "is empty", "record or export the take again");
    }
    MidiBytes in = new MidiBytes(bytes, 0, bytes.length);
    try {
      return read(file, unwrapped(file, in, bytes));
    } catch (MidiBytes.Ended e) {
      throw MidiFileException.of(
          file,
          "ends within its header, after " + bytes.length + " bytes",
          "copy or export the file again");
    }
  }

  private static MidiBytes unwrapped(String file, MidiBytes in, byte[] bytes) {
    if (in.left() < 12 || !in.tag().equals("RIFF")) {
      return new MidiBytes(bytes, 0, bytes.length);
    }
    in.u32LowestFirst();
    String kind = in.tag();
    if (!kind.equals("RMID")) {
      throw MidiFileException.of(
          file,
          "is a RIFF file of kind “" + MidiText.plain(kind) + "”, not a MIDI file",
          "give the MIDI file of the take");
    }
    while (true) {
      String tag = in.tag();
      long length = in.u32LowestFirst();
      if (tag.equals("data")) {
        return new MidiBytes(bytes, in.at(), (int) Math.min(bytes.length, in.at() + length));
      }
      in.skip(length + length % 2);
    }
  }

  private static MidiChunks read(String file, MidiBytes in) {
    int start = in.at();
    if (in.left() >= 4 && !in.tag().equals("MThd")) {
      throw MidiFileException.at(
          file,
          "header",
          start,
          "this is not a Standard MIDI File, since it does not begin with MThd",
          "give a .mid file of the take");
    }
    long headerLength = in.u32();
    if (headerLength < 6) {
      throw MidiFileException.at(
          file,
          "header",
          start + 4,
          "the header claims " + headerLength + " bytes, fewer than 6",
          EXPORT_AGAIN);
    }
    int format = in.u16();
    int declared = in.u16();
    int word = in.u16();
    in.skip(headerLength - 6);
    if (format == 2) {
      throw MidiFileException.at(
          file,
          "header",
          start + 8,
          "this is a MIDI file of format 2, whose tracks are separate pieces",
          "export the one piece as format 0 or 1");
    }
    if (format > 2) {
      throw MidiFileException.at(
          file, "header", start + 8, "there is no MIDI file format " + format, EXPORT_AGAIN);
    }
    Division division;
    try {
      division = Division.of(word);
    } catch (IllegalArgumentException e) {
      throw MidiFileException.at(file, "header", start + 12, e.getMessage(), EXPORT_AGAIN);
    }
    List<String> remarks = new ArrayList<>();
    List<TrackChunk> tracks = tracks(in, remarks);
    if (tracks.isEmpty()) {
      throw MidiFileException.at(
          file, "header", start + 10, "there is no track in the file", EXPORT_AGAIN);
    }
    if (tracks.size() != declared) {
      remarks.add(
          "the header promises "
              + declared
              + " tracks and the file holds "
              + tracks.size()
              + ", which were read");
    }
    return new MidiChunks(format, declared, division, List.copyOf(tracks), remarks);
  }

  private static List<TrackChunk> tracks(MidiBytes in, List<String> remarks) {
    List<TrackChunk> tracks = new ArrayList<>();
    while (in.left() >= 8) {
      int chunk = in.at();
      String tag = in.tag();
      long length = in.u32();
      int here = (int) Math.min(length, in.left());
      if (tag.equals("MTrk")) {
        tracks.add(new TrackChunk(tracks.size() + 1, in.at(), in.at() + here, in.at() + length));
      } else if (here < length) {
        remarks.add(
            "what follows the tracks, from byte " + chunk + ", is not MIDI and was left out");
      }
      in.skip(here);
    }
    return tracks;
  }
}
