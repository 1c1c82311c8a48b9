package holdfast.listening.alignment;

import holdfast.listening.alignment.BackingPlace.Sureness;
import holdfast.listening.audio.EarSound;
import holdfast.listening.audio.Resampler;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Finds a known backing in a take, whatever is sung over it. */
public final class BackingFinder {

  /** What of a take is compared, from its first sound on, where less does not make it sure. */
  private static final double PART_SECONDS = 90;

  /** What is compared at first. */
  private static final double FIRST_PART_SECONDS = 40;

  /** What of it the line is laid through. */
  private static final double LINE_SECONDS = 600;

  /**
   * A clock is off by less than this; a greater stretch whose pitch stayed is another tempo. Sound
   * cards and phones are within 200 ppm (from memory).
   */
  private static final double CLOCK = 0.004;

  /** Speeds that are tried first: only clocks differ. */
  private static final double NARROW = 0.003;

  /** Speeds that are tried then. */
  private static final double WIDE = 0.0525;

  /** Of scores this near, the earlier chorus is taken: the form comes round, and all else fits. */
  private static final double SAME = 0.06;

  /**
   * How much better than any other place of the form a place must fit where the sound itself
   * agrees, too. Over our ten charts, right ones stood at 1.19 to 1.77 and wrong ones at 1.00 to
   * 1.09.
   */
  private static final double SURE = 1.15;

  /** The same for another band's sound, which a line that is sung to its chords resembles. */
  private static final double LIKELY = 1.3;

  private static final double LIKELY_SHARE = 0.8;

  /** With few speeds tried there are fewer rivals: only a plain winner ends the search early. */
  private static final double SURE_AT_ONCE = 1.25;

  /** So many windows must agree, and such a share of them, before a line is believed. */
  private static final int LEAST_AGREEING = 3;

  private static final double AGREEING_SHARE = 0.6;

  /**
   * Root mean square distance of windows from their line, in seconds, over which they agree by
   * chance: a line sung in tune with the backing resembles it at any delay. Without any backing
   * 0.32 ms to 0.40 ms were measured, 30 dB under the voice 0.07 ms to 0.17 ms.
   */
  private static final double CHANCE_SPREAD = 0.00027;

  /** The last chord has died away by then, in seconds. */
  private static final double RELEASE_SECONDS = 0.6;

  /** How many stretches of a chorus must be without the backing before it is over. */
  private static final int SILENT_STRETCHES = 3;

  /** What of a take lies behind the last chorus and is shorter than this holds no note. */
  private static final double NOTHING_SECONDS = 0.2;

  private final EarSound take;
  private final KnownBacking backing;

  private BackingFinder(EarSound take, KnownBacking backing) {
    this.take = take;
    this.backing = backing;
  }

  /**
   * The best place, with how sure it is.
   *
   * @param take the recording
   * @param backing the backing, as long as the take and a chorus more, or as long as it is
   */
  public static BackingPlace find(EarSound take, KnownBacking backing) {
    return new BackingFinder(take, backing).find();
  }

  /**
   * The place near the one that the user names, tightened where the backing can be heard there.
   *
   * @param barOneSeconds the second of the take at which bar 1 begins, as the user says
   */
  public static BackingPlace near(EarSound take, KnownBacking backing, double barOneSeconds) {
    BackingFinder finder = new BackingFinder(take, backing);
    TimeLine said = new TimeLine(barOneSeconds - backing.barOneSeconds(), 1);
    RenderedBacking known = backing.rendered().apply(1);
    LineFit fine = finder.sound(known, finder.onsets(known, said).line());
    boolean ours = believable(fine);
    TimeLine line = ours ? fine.line() : said;
    return finder.place(backing, 1, line, Sureness.SURE, ours, 1);
  }

  private BackingPlace find() {
    double first = firstSound();
    RenderedBacking known = backing.rendered().apply(1);
    Part part = part(known, first, FIRST_PART_SECONDS);
    List<CoarseSearch.Place> places = part.places(NARROW);
    Optional<BackingPlace> atOnce = atOnce(known, places, part.middle());
    if (atOnce.isEmpty() && take.seconds() > first + FIRST_PART_SECONDS) {
      part = part(known, first, PART_SECONDS);
      places = part.places(NARROW);
      atOnce = atOnce(known, places, part.middle());
    }
    if (atOnce.isPresent()) {
      return atOnce.get();
    }
    double middle = part.middle();
    if (places.isEmpty() || clearness(places, middle) < SURE_AT_ONCE) {
      places = part.places(WIDE);
    }
    return places.isEmpty() ? nowhere() : follow(known, places, middle);
  }

  /** What of the take is compared, and where it is looked for. */
  private record Part(SoundPrint print, double first, CoarseSearch search) {

    double middle() {
      return first + 0.5 * print.frames() / SoundPrint.RATE;
    }

    List<CoarseSearch.Place> places(double farthestSpeed) {
      return search.places(print, first, farthestSpeed);
    }
  }

  private Part part(RenderedBacking known, double first, double seconds) {
    long from = (long) (first * Resampler.EAR_RATE);
    long count = Math.min(take.length() - from, (long) (seconds * Resampler.EAR_RATE));
    SoundPrint print = SoundPrint.of(take, from, count);
    double head = backing.barOneSeconds() + backing.chorusSeconds();
    return new Part(print, first, known.search(head, print.frames()));
  }

  /** Most takes are made on a clock so like ours that the sound itself is found from there. */
  private Optional<BackingPlace> atOnce(
      RenderedBacking known, List<CoarseSearch.Place> places, double middle) {
    double clearness = places.isEmpty() ? 0 : clearness(places, middle);
    if (clearness < SURE) {
      return Optional.empty();
    }
    TimeLine coarse = earliestOfEqual(places, middle).line();
    double there = coarse.backing(middle);
    LineFit fine = sound(known, new TimeLine(middle - there, 1));
    return believable(fine)
        ? Optional.of(place(backing, 1, fine.line(), Sureness.SURE, true, clearness))
        : Optional.empty();
  }

  /**
   * @param tempoRatio of what was played along to, against the chart's tempo
   * @param line lays the take onto the backing rendered at that tempo
   */
  private BackingPlace place(
      KnownBacking known,
      double tempoRatio,
      TimeLine line,
      Sureness sureness,
      boolean ours,
      double clearness) {
    return new BackingPlace(
        line.take(known.barOneSeconds()),
        line.stretch() / tempoRatio,
        tempoRatio,
        line.stretch(),
        sureness,
        ours,
        rounds(known, line, ours),
        clearness);
  }

  private BackingPlace nowhere() {
    return new BackingPlace(
        backing.barOneSeconds(), 1, 1, 1, Sureness.UNSURE, false, OptionalInt.empty(), 0);
  }

  private double firstSound() {
    int block = Resampler.EAR_RATE / 10;
    float[] samples = new float[block];
    double loudest = 0;
    long upTo = Math.min(take.length(), 120L * Resampler.EAR_RATE);
    for (int pass = 0; pass < 2; pass++) {
      for (long at = 0; at < upTo; at += block) {
        take.read(at, samples, 0, block);
        double sum = 0;
        for (float value : samples) {
          sum += Float.isFinite(value) ? value * value : 0;
        }
        if (pass == 0) {
          loudest = Math.max(loudest, sum);
        } else if (sum > 1e-5 * loudest) {
          return (double) at / Resampler.EAR_RATE;
        }
      }
    }
    return 0;
  }

  private LineFit onsets(RenderedBacking known, TimeLine from) {
    long samples = (long) (LINE_SECONDS * Resampler.EAR_RATE);
    return FineByOnsets.fit(take, samples, known, from);
  }

  private LineFit sound(RenderedBacking known, TimeLine from) {
    return new FineBySound(take, (long) (LINE_SECONDS * Resampler.EAR_RATE), known).fit(from);
  }

  private static boolean believable(LineFit fit) {
    return fit.agreeing() >= LEAST_AGREEING
        && fit.share() > AGREEING_SHARE
        && fit.spreadSeconds() < CHANCE_SPREAD;
  }

  private BackingPlace follow(
      RenderedBacking known, List<CoarseSearch.Place> places, double middle) {
    CoarseSearch.Place chosen = earliestOfEqual(places, middle);
    double clearness = clearness(places, middle);
    LineFit onsets = onsets(known, chosen.line());
    TimeLine line = onsets.agreeing() >= LEAST_AGREEING ? onsets.line() : chosen.line();
    if (!chosen.pitchMoved() && Math.abs(line.stretch() - 1) > CLOCK) {
      return atAnotherTempo(line, onsets, clearness);
    }
    LineFit fine = sound(known, line);
    boolean ours = believable(fine);
    TimeLine best = ours ? fine.line() : line;
    return place(backing, 1, best, sureness(clearness, ours, onsets), ours, clearness);
  }

  /**
   * After how many choruses the backing stops in the take. A backing that is taken out of a take in
   * which it has stopped would be put into it.
   */
  private OptionalInt rounds(KnownBacking known, TimeLine line, boolean ours) {
    OptionalInt rounds = OptionalInt.empty();
    if (!ours) {
      return rounds;
    }
    FineBySound sound = new FineBySound(take, take.length(), known.rendered().apply(1));
    double lasts = line.backing(take.seconds()) - known.barOneSeconds();
    for (int n = (int) Math.floor(lasts / known.chorusSeconds()); n >= 1; n--) {
      double end = line.take(known.barOneSeconds() + n * known.chorusSeconds());
      if (take.seconds() - end > NOTHING_SECONDS) {
        if (sounds(sound, end + RELEASE_SECONDS, line)) {
          return rounds;
        }
        rounds = OptionalInt.of(n);
      }
    }
    return rounds;
  }

  private static boolean sounds(FineBySound sound, double from, TimeLine line) {
    for (int i = 0; i < SILENT_STRETCHES; i++) {
      if (sound.sounds(from + i * FineBySound.STRETCH_SECONDS, line)) {
        return true;
      }
    }
    return false;
  }

  /** The same pitch and another speed: the backing is rendered anew at the tempo that was found. */
  private BackingPlace atAnotherTempo(TimeLine line, LineFit onsets, double clearness) {
    double ratio = 1 / line.stretch();
    KnownBacking other = backing.atTempo(ratio);
    LineFit fine = sound(other.rendered().apply(1), new TimeLine(line.start(), 1));
    boolean ours = believable(fine);
    TimeLine best = ours ? fine.line() : new TimeLine(line.start(), 1);
    return place(other, ratio, best, sureness(clearness, ours, onsets), ours, clearness);
  }

  private static Sureness sureness(double clearness, boolean ours, LineFit onsets) {
    if (ours && clearness >= SURE) {
      return Sureness.SURE;
    }
    boolean alike = clearness >= LIKELY && onsets.share() >= LIKELY_SHARE;
    return alike ? Sureness.LIKELY : Sureness.UNSURE;
  }

  /** Whether two places differ by nothing but whole choruses. */
  private boolean sameInForm(CoarseSearch.Place a, CoarseSearch.Place b, double middle) {
    double away = a.line().backing(middle) - b.line().backing(middle);
    double choruses = away / backing.chorusSeconds();
    return Math.abs(choruses - Math.rint(choruses)) * backing.chorusSeconds() < 0.25;
  }

  private CoarseSearch.Place earliestOfEqual(List<CoarseSearch.Place> places, double middle) {
    CoarseSearch.Place best = places.get(0);
    CoarseSearch.Place chosen = best;
    for (CoarseSearch.Place place : places) {
      if (sameInForm(place, best, middle)
          && place.score() > best.score() * (1 - SAME)
          && place.line().backing(middle) < chosen.line().backing(middle) - 0.5) {
        chosen = place;
      }
    }
    return chosen;
  }

  /** The best score over the best score of another place of the form. */
  private double clearness(List<CoarseSearch.Place> places, double middle) {
    CoarseSearch.Place best = places.get(0);
    double other = 0.02;
    for (CoarseSearch.Place place : places) {
      if (!sameInForm(place, best, middle)) {
        other = Math.max(other, place.score());
      }
    }
    return best.score() / other;
  }
}
