package holdfast.listening.audio;

import com.jcraft.jogg.Packet;
import com.jcraft.jogg.Page;
import com.jcraft.jogg.StreamState;
import com.jcraft.jogg.SyncState;
import com.jcraft.jorbis.Block;
import com.jcraft.jorbis.Comment;
import com.jcraft.jorbis.DspState;
import com.jcraft.jorbis.Info;
import java.io.IOException;
import java.io.InputStream;

/**
 * Reads Ogg Vorbis (Xiph.Org, "Vorbis I specification") packet by packet. The decoder's Java Sound
 * provider is not used, because it swallows the last page, which is all of a short take.
 */
final class VorbisFile {

  private static final int BLOCK_BYTES = 8192;
  private static final int HEADERS = 3;

  private final SyncState sync = new SyncState();
  private final StreamState stream = new StreamState();
  private final Page page = new Page();
  private final Packet packet = new Packet();
  private final Info info = new Info();
  private final Comment comment = new Comment();
  private final SampleSink sink;
  private final int mostFrames;
  private float[][] told = new float[0][];
  private int frames;

  private VorbisFile(SampleSink sink, int mostFrames) {
    this.sink = sink;
    this.mostFrames = mostFrames;
  }

  /** Reads a whole stream and tells it block by block. */
  static void read(InputStream in, int mostFrames, SampleSink sink) throws IOException {
    new VorbisFile(sink, mostFrames).decode(in);
  }

  private void decode(InputStream in) throws IOException {
    sync.init();
    info.init();
    comment.init();
    DspState dsp = new DspState();
    Block block = new Block(dsp);
    int headers = 0;
    boolean started = false;
    float[][][] pcm = new float[1][][];
    while (nextPage(in)) {
      if (!started) {
        stream.init(page.serialno());
        started = true;
      }
      stream.pagein(page);
      int got;
      while ((got = stream.packetout(packet)) != 0) {
        if (got < 0) {
          continue;
        }
        if (headers < HEADERS) {
          if (info.synthesis_headerin(comment, packet) < 0) {
            throw new IOException("not an Ogg Vorbis stream");
          }
          headers++;
          if (headers == HEADERS) {
            dsp.synthesis_init(info);
            block.init(dsp);
          }
          continue;
        }
        if (block.synthesis(packet) == 0) {
          dsp.synthesis_blockin(block);
        }
        int[] offsets = new int[info.channels];
        int count;
        while ((count = dsp.synthesis_pcmout(pcm, offsets)) > 0) {
          keep(pcm[0], offsets, count);
          dsp.synthesis_read(count);
        }
      }
      if (page.eos() != 0) {
        break;
      }
    }
    if (frames == 0) {
      throw new IOException("there is no sound in it");
    }
  }

  private boolean nextPage(InputStream in) throws IOException {
    while (sync.pageout(page) != 1) {
      int at = sync.buffer(BLOCK_BYTES);
      int got = in.read(sync.data, at, BLOCK_BYTES);
      if (got <= 0) {
        return false;
      }
      sync.wrote(got);
    }
    return true;
  }

  private void keep(float[][] pcm, int[] offsets, int count) throws IOException {
    if (frames + count > mostFrames) {
      throw new IOException("longer than can be read at once; cut it into shorter takes");
    }
    int used = Math.min(2, info.channels);
    if (frames == 0) {
      sink.begin(info.rate, used);
    }
    if (told.length != used || told[0].length < count) {
      told = new float[used][count];
    }
    for (int c = 0; c < used; c++) {
      System.arraycopy(pcm[c], offsets[c], told[c], 0, count);
    }
    sink.take(told, count);
    frames += count;
  }
}
