package holdfast.motif;

import holdfast.theory.PitchClassSet;
import java.util.ArrayList;
import java.util.List;

/** The idea's pitches mirrored about an axis that the phrase proposes. */
final class MirrorMaps {

  private final Line phrase;
  private final Ground[] grounds;
  private final PitchMaps slips;
  private final Scales scales;
  private final int m;

  MirrorMaps(Line phrase, Ground[] grounds, PitchMaps slips, Scales scales) {
    this.phrase = phrase;
    this.grounds = grounds;
    this.slips = slips;
    this.scales = scales;
    this.m = phrase.size;
  }

  /** Mirror images in semitones, about the axes that the phrase proposes. */
  List<PitchMap> bySemitones(Line idea, int most) {
    List<PitchMap> maps = new ArrayList<>();
    for (int axis : Votes.best(below(idea.pitch), phrase.pitch, most)) {
      int[] expected = new int[idea.size * m];
      for (int i = 0; i < idea.size; i++) {
        for (int j = 0; j < m; j++) {
          expected[i * m + j] = axis - idea.pitch[i];
        }
      }
      int by = axis - 2 * idea.pitch[0];
      PitchMap map =
          new PitchMap(
              PitchMap.Move.TRANSPOSED,
              expected,
              slips.slippedInMirror(expected, idea),
              by,
              0,
              logAxis(by));
      if (!map.isRigid(idea.pitch, m)) {
        maps.add(map);
      }
    }
    return maps;
  }

  /** Mirror images by scale steps. */
  List<PitchMap> bySteps(Line idea, Ground[] ideaGrounds, PitchClassSet key, int most) {
    List<PitchMap> maps = new ArrayList<>();
    if (!grounds[0].scale().isEmpty()) {
      addMirror(maps, idea, ideaGrounds[0].scale(), null, most);
    }
    if (!key.isEmpty()) {
      addMirror(maps, idea, key, key, most);
    }
    if (maps.isEmpty() && grounds[0].scale().isEmpty()) {
      for (int tonic = 0; tonic < 12; tonic++) {
        PitchClassSet scale = PitchMaps.MAJOR.transpose(tonic);
        if (PitchMaps.holds(scale, idea)) {
          addMirror(maps, idea, scale, scale, 1);
        }
      }
    }
    return maps;
  }

  private void addMirror(
      List<PitchMap> maps, Line idea, PitchClassSet from, PitchClassSet to, int most) {
    PitchClassSet first = to == null ? grounds[0].scale() : to;
    Ladder there = scales.ladder(first);
    Ladder home = from.size() == first.size() ? scales.alongside(from, first) : there;
    int[] below = below(home.steps(idea.pitch));
    for (int sum : Votes.best(below, there.steps(phrase.pitch), most)) {
      int[] expected = new int[idea.size * m];
      for (int i = 0; i < idea.size; i++) {
        int pitch = there.pitch(sum + below[i]) - home.above(idea.pitch[i]);
        for (int j = 0; j < m; j++) {
          expected[i * m + j] = pitch;
        }
      }
      int by = expected[0] - idea.pitch[0];
      PitchMap map =
          new PitchMap(
              PitchMap.Move.STEPS,
              expected,
              slips.slippedInMirror(expected, idea),
              by,
              sum + 2 * below[0],
              logAxis(by));
      if (!map.isRigid(idea.pitch, m) && !map.isIn(maps)) {
        maps.add(map);
      }
    }
  }

  /** As far below nothing as they lie above it. */
  private static int[] below(int[] numbers) {
    int[] turned = new int[numbers.length];
    for (int i = 0; i < turned.length; i++) {
      turned[i] = -numbers[i];
    }
    return turned;
  }

  /** ln probability of a mirror image that begins so far from the idea's first note. */
  private static double logAxis(int by) {
    return by == 0 ? Math.log(0.3) : Math.log(0.7) + PitchMaps.logTransposition(by);
  }
}
