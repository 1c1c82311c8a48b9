package holdfast.listening.alignment;

import holdfast.listening.audio.EarSound;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Prints how far bar 1 and speed are off in made-up takes; run by hand. */
final class AlignmentBench {

  private AlignmentBench() {}

  public static void main(String[] args) {
    String chart = args.length > 0 ? args[0] : "lantern-turn";
    Map<String, Mixture.Wish> wishes = wishes(chart, 7);
    for (Map.Entry<String, Mixture.Wish> entry : wishes.entrySet()) {
      if (args.length > 2 && !entry.getKey().contains(args[2])) {
        continue;
      }
      Mixture mixture = Mixture.of(entry.getValue());
      long start = System.nanoTime();
      String over = args.length > 1 ? args[1] : chart;
      BackingPlace found =
          BackingFinder.find(EarSound.of(mixture.samples()), Mixture.known(over, 4));
      double off = found.barOneSeconds() - mixture.barOneSeconds();
      double chorus = Mixture.known(over, 1).chorusSeconds() * mixture.stretch();
      System.out.printf(
          Locale.ROOT,
          "%-28s bar 1 off %9.2f ms (%5.2f choruses), speed off %8.4f %%, %s clear %.2f ours %b (%.1f s)%n",
          entry.getKey(),
          1000 * (off - chorus * Math.rint(off / chorus)),
          off / chorus,
          100 * (found.stretch() / mixture.stretch() - 1),
          found.sureness(),
          found.clearness(),
          found.ourSound(),
          (System.nanoTime() - start) / 1e9);
    }
  }

  static Map<String, Mixture.Wish> wishes(String chart, long seed) {
    Mixture.Wish usual = Mixture.Wish.usual(chart, seed);
    Map<String, Mixture.Wish> wishes = new LinkedHashMap<>();
    wishes.put("-6 dB", usual);
    wishes.put("loud speaker +6", usual.backing(-14));
    wishes.put("-12 dB", usual.backing(-32));
    wishes.put("-24 dB barely", usual.backing(-44));
    wishes.put("-30 dB barely", usual.backing(-50));
    wishes.put("room 0.8 s", usual.room(0.8));
    wishes.put("noise 10 dB under voice", usual.noise(-30));
    wishes.put("clock +1 %", usual.clock(1.01));
    wishes.put("clock -1 %", usual.clock(0.99));
    wishes.put("clock +3 %", usual.clock(1.03));
    wishes.put("clock -3 %", usual.clock(0.97));
    wishes.put("clock +3 % -12 dB", usual.clock(1.03).backing(-32));
    wishes.put("clock 50 ppm", usual.clock(1.00005));
    wishes.put("tempo +3 %", usual.tempo(1.03));
    wishes.put("tempo -3 %", usual.tempo(0.97));
    wishes.put("tempo -4.2 % -12 dB", usual.tempo(0.958).backing(-32));
    wishes.put("begun in bar 3", usual.from(12.3));
    wishes.put("begun 9 s before", usual.from(-9));
    wishes.put("20 s", usual.lasting(20));
    wishes.put("nothing of the backing", usual.backing(-200));
    wishes.put("noise only", usual.backing(-200).voice(-200));
    return wishes;
  }
}
