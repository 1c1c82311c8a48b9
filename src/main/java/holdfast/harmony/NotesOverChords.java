package holdfast.harmony;

import holdfast.theory.ChordKind;
import holdfast.theory.ChordPalette;
import holdfast.theory.ChordSymbol;
import holdfast.theory.NoteName;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * How usual is this note over this chord, at this place, at this length? Answered from counts over
 * 456 expert solos ({@code notes-over-chords.csv} beside this class, with its source and licence).
 *
 * <p>The answer is a log-odds: the natural logarithm of how much likelier an expert plays the pitch
 * class there than a player who takes any of the twelve at random. About +0.5 for a chord tone, -1
 * for the plainest clash.
 *
 * <p>The counts know eleven chord kinds and no keys. What the {@link ChordPalette} of the very
 * chord says, with its alterations, its key and the chord that follows, is mixed in: each class of
 * tone gets the mean share that experts give to that class over the nearest kind.
 */
final class NotesOverChords {

  /** The one table: it never changes. */
  static final NotesOverChords EXPERTS = new NotesOverChords();

  /** How long a note is, in quarter notes: the classes of the counts, bounds at powers of √2. */
  enum Length {
    VERY_SHORT("very-short"),
    SHORT("short"),
    LONG("long");

    private static final double SHORT_FROM_QUARTERS = Math.pow(2, -1.5);
    private static final double LONG_FROM_QUARTERS = Math.pow(2, -0.5);

    private final String text;

    Length(String text) {
      this.text = text;
    }

    static Length of(double quarters) {
      if (quarters < SHORT_FROM_QUARTERS) {
        return VERY_SHORT;
      }
      return quarters < LONG_FROM_QUARTERS ? SHORT : LONG;
    }
  }

  /** Counts of one place lean on those of all places as if these had been counted with them. */
  private static final double PRIOR_NOTES = 400;

  /** Added to each share, so that what was never counted is rare and not impossible. */
  private static final double FLOOR = 0.004;

  /**
   * Length, place and end of phrase overlap in what they tell, so that the two that are added to
   * length count less than in full. Chosen, not measured: the counts hold no joint table.
   */
  private static final double OVERLAP = 0.7;

  /**
   * How much the palette counts beside the counts: little where the counts know the chord kind,
   * more where they know only its nearest kin. In a simulation from the counts themselves the
   * smaller one costs nothing; it is there for the key, which the counts do not hold.
   */
  private static final double PALETTE_SHARE_KNOWN = 0.3;

  private static final double PALETTE_SHARE_KIN = 0.6;

  private static final String MAJOR_TRIAD = "maj";

  private final Map<String, Map<Situation, Shares>> kinds;

  /** Reads the counts. */
  NotesOverChords() {
    this.kinds = read();
  }

  /**
   * Where and how long a note sounds.
   *
   * @param length how long
   * @param place where in the bar it starts
   * @param phraseEnd whether it is the last before a rest
   */
  record Situation(Length length, Beats.Place place, boolean phraseEnd) {}

  /** The log-odds of a pitch over a chord, by the kinder reading where the chord is optional. */
  double logOdds(ChordHere here, int pitch, Situation situation) {
    double odds = oddsOverOne(here, pitch, situation);
    return here.without().isPresent()
        ? Math.max(odds, oddsOverOne(here.without().get(), pitch, situation))
        : odds;
  }

  private double oddsOverOne(ChordHere here, int pitch, Situation situation) {
    ChordSymbol chord = here.harmony().chord().orElseThrow();
    String kin = kin(chord.kind());
    Shares shares = kinds.get(kin).get(situation);
    double paletteShare = isKnown(chord, kin) ? PALETTE_SHARE_KNOWN : PALETTE_SHARE_KIN;
    int root = chord.root().pitchClass();
    double sum = 0;
    double asked = 0;
    for (int step = 0; step < 12; step++) {
      double share =
          Math.exp(
              (1 - paletteShare) * shares.logShare(step)
                  + paletteShare * shares.logShareOf(Standing.of(root + step, here.palette())));
      sum += share;
      if (step == Math.floorMod(pitch - root, 12)) {
        asked = share;
      }
    }
    return Math.log(12 * asked / sum);
  }

  /** What a tone is to the palette: its class, with the disputed tensions apart. */
  private enum Standing {
    CHORD_TONE,
    TENSION,
    DISPUTED,
    SCALE_TONE,
    OUTSIDE;

    static Standing of(int pitch, ChordPalette palette) {
      return switch (palette.toneClass(pitch)) {
        case CHORD_TONE -> CHORD_TONE;
        case TENSION -> palette.disputed().contains(pitch) ? DISPUTED : TENSION;
        case SCALE_TONE -> SCALE_TONE;
        case OUTSIDE -> OUTSIDE;
      };
    }
  }

  /** Logarithms of the shares of one chord kind in one situation, by step and by class of tone. */
  private static final class Shares {
    private final double[] bySteps;
    private final EnumMap<Standing, Double> byStanding = new EnumMap<>(Standing.class);

    Shares(double[] logShares, ChordPalette palette) {
      this.bySteps = logShares;
      for (Standing standing : Standing.values()) {
        logMean(logShares, palette, standing).ifPresent(mean -> byStanding.put(standing, mean));
      }
      // Where no tone of this kind stands so, the mean lies between its kin.
      byStanding.computeIfAbsent(Standing.OUTSIDE, s -> Math.log(FLOOR));
      fill(Standing.TENSION, Standing.CHORD_TONE, Standing.OUTSIDE);
      fill(Standing.SCALE_TONE, Standing.TENSION, Standing.OUTSIDE);
      fill(Standing.DISPUTED, Standing.TENSION, Standing.SCALE_TONE);
    }

    double logShare(int step) {
      return bySteps[step];
    }

    double logShareOf(Standing standing) {
      return byStanding.get(standing);
    }

    private void fill(Standing standing, Standing above, Standing below) {
      double mean = (byStanding.get(above) + byStanding.get(below)) / 2;
      byStanding.putIfAbsent(standing, mean);
    }

    private static OptionalDouble logMean(
        double[] logShares, ChordPalette palette, Standing standing) {
      OptionalDouble mean =
          IntStream.range(0, 12)
              .filter(step -> Standing.of(step, palette) == standing)
              .mapToDouble(step -> Math.exp(logShares[step]))
              .average();
      return mean.isPresent() ? OptionalDouble.of(Math.log(mean.getAsDouble())) : mean;
    }
  }

  /** The counted kind that is nearest: by third, then seventh, then fifth. */
  private static String kin(ChordKind kind) {
    if (kind.has(3, -1) && !kind.has(3, 0)) {
      if (kind.has(5, -1) && !kind.has(5, 0)) {
        return kind.has(7, -2) ? "°7" : kind.has(7, -1) ? "m7b5" : "°";
      }
      return kind.has(7, 0) ? "m(maj7)" : kind.has(7, -1) ? "m7" : kind.has(6, 0) ? "m6" : "m";
    }
    return kind.has(7, -1) ? "7" : kind.has(7, 0) ? "maj7" : kind.has(6, 0) ? "6" : MAJOR_TRIAD;
  }

  /** Whether the chord is of the counted kind itself, natural ninths and thirteenths aside. */
  private static boolean isKnown(ChordSymbol chord, String kin) {
    int fifth = kin.contains("b5") || kin.contains("°") ? -1 : 0;
    boolean plain =
        chord.kind().degrees().stream()
            .allMatch(
                d ->
                    switch (d.number()) {
                      case 2, 4 -> false;
                      case 5 -> d.alter() == fifth;
                      case 1, 3, 6, 7 -> true;
                      default -> d.alter() == 0;
                    });
    boolean hasThird = chord.kind().degrees().stream().anyMatch(d -> d.number() == 3);
    return plain && hasThird && chord.bass().isEmpty();
  }

  private static Map<String, Map<Situation, Shares>> read() {
    Map<String, Map<String, double[]>> shares = new HashMap<>();
    Map<String, Map<String, Integer>> counts = new HashMap<>();
    try (InputStream in = NotesOverChords.class.getResourceAsStream("notes-over-chords.csv");
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.startsWith("#") || line.startsWith("where,")) {
          continue;
        }
        String[] cells = line.split(",", -1);
        double[] share = new double[12];
        for (int step = 0; step < 12; step++) {
          share[step] = Double.parseDouble(cells[3 + step]);
        }
        shares.computeIfAbsent(cells[1], kind -> new HashMap<>()).put(cells[0], share);
        counts
            .computeIfAbsent(cells[1], kind -> new HashMap<>())
            .put(cells[0], Integer.valueOf(cells[2]));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Map<String, Map<Situation, Shares>> kinds = new HashMap<>();
    shares.forEach((kind, share) -> kinds.put(kind, situations(kind, share, counts.get(kind))));
    return Map.copyOf(kinds);
  }

  private static Map<Situation, Shares> situations(
      String kind, Map<String, double[]> shares, Map<String, Integer> counts) {
    Map<String, double[]> logs = new HashMap<>();
    shares.forEach(
        (where, share) ->
            logs.put(where, smoothedLog(share, counts.get(where), shares.get("all"))));
    ChordPalette palette = paletteOf(kind);
    Map<Situation, Shares> situations = new HashMap<>();
    for (Length length : Length.values()) {
      for (Beats.Place place : Beats.Place.values()) {
        for (boolean end : new boolean[] {false, true}) {
          double[] combined = new double[12];
          for (int step = 0; step < 12; step++) {
            double all = logs.get("all")[step];
            combined[step] =
                logs.get(length.text)[step]
                    + OVERLAP * (logs.get(place.text())[step] - all)
                    + (end ? OVERLAP * (logs.get("phrase-end")[step] - all) : 0);
          }
          situations.put(new Situation(length, place, end), new Shares(combined, palette));
        }
      }
    }
    return situations;
  }

  private static double[] smoothedLog(double[] share, double notes, double[] all) {
    double[] log = new double[12];
    for (int step = 0; step < 12; step++) {
      double pooled = (share[step] * notes + all[step] * PRIOR_NOTES) / (notes + PRIOR_NOTES);
      log[step] = Math.log(pooled + FLOOR);
    }
    return log;
  }

  private static ChordPalette paletteOf(String kind) {
    String suffix = kind.equals(MAJOR_TRIAD) ? "" : kind;
    ChordSymbol chord =
        new ChordSymbol(
            NoteName.parse("C"), ChordKind.read(suffix).orElseThrow(), Optional.empty());
    return ChordPalette.of(chord, Optional.empty(), Optional.empty());
  }
}
