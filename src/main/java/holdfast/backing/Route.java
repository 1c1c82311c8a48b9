package holdfast.backing;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * The way through the form: which bar comes after which.
 *
 * @param bars what is played round and round: the whole form, or some bars of it
 * @param pickup whether a pick-up bar leads in
 * @param rounds how many times; empty for without end
 * @param loop bars that are held on to for now; while there are some, no round is counted
 */
public record Route(BarRange bars, boolean pickup, OptionalInt rounds, Optional<BarRange> loop) {

  /** Checks that something is played. */
  public Route {
    if (rounds.isPresent() && rounds.getAsInt() < 1) {
      throw new IllegalArgumentException("play 1 chorus or more, not " + rounds.getAsInt());
    }
  }

  /** The first bar. */
  public BarPlace first() {
    return new BarPlace(1, pickup ? 0 : bars.first());
  }

  /** The bar after this one; empty after the last. */
  public Optional<BarPlace> after(BarPlace here) {
    if (loop.isPresent()) {
      boolean goesOn = loop.get().contains(here.bar()) && here.bar() < loop.get().last();
      return Optional.of(new BarPlace(here.chorus(), goesOn ? here.bar() + 1 : loop.get().first()));
    }
    if (here.bar() < bars.last()) {
      return Optional.of(new BarPlace(here.chorus(), Math.max(here.bar() + 1, bars.first())));
    }
    if (rounds.isPresent() && here.chorus() >= rounds.getAsInt()) {
      return Optional.empty();
    }
    return Optional.of(new BarPlace(here.chorus() + 1, bars.first()));
  }

  /** The same way, held on these bars until it is let go. */
  public Route holding(BarRange held) {
    return new Route(bars, pickup, rounds, Optional.of(held));
  }

  /** The same way, going on. */
  public Route goingOn() {
    return new Route(bars, pickup, rounds, Optional.empty());
  }
}
