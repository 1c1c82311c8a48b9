package holdfast.practice.invent;

import holdfast.chart.Changes;
import holdfast.melody.Note;
import holdfast.motif.Context;
import holdfast.motif.Player;
import holdfast.session.JudgedTake;
import holdfast.session.Setting;
import holdfast.time.Metre;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** An inventing session: idea after idea, each kept and held against those before it. */
public final class Inventing {

  private final Sameness sameness;
  private final List<Invention> ideas = new ArrayList<>();

  /**
   * An empty session.
   *
   * @param sameness tells which ideas are the same
   */
  public Inventing(Sameness sameness) {
    this.sameness = sameness;
  }

  /** An empty session over these chords. */
  public static Inventing over(Changes changes, Player player, Metre metre) {
    return new Inventing(new Sameness(Context.over(changes, player, metre.beats())));
  }

  /** The session that a take was, as far as its notes tell. */
  public static Inventing of(JudgedTake take) {
    Setting setting = take.setting();
    Inventing session = over(setting.changes(), setting.player(), setting.metre());
    take.phrases().forEach(phrase -> session.hear(phrase.notes()));
    return session;
  }

  /** Keeps the next idea, and says what it is beside the others. */
  public Invention hear(List<Note> notes) {
    int number = ideas.size() + 1;
    for (Invention old : ideas) {
      Optional<Clothes> clothes =
          old.isNew() ? sameness.between(old.notes(), notes) : Optional.empty();
      if (clothes.isPresent()) {
        return keep(new Invention(number, notes, OptionalInt.of(old.number()), clothes, Set.of()));
      }
    }
    Set<Difference> differences =
        different().stream()
            .reduce((earlier, later) -> later)
            .map(last -> Difference.between(last.notes(), notes))
            .orElse(Set.of());
    return keep(new Invention(number, notes, OptionalInt.empty(), Optional.empty(), differences));
  }

  /** All ideas, in order. */
  public List<Invention> ideas() {
    return List.copyOf(ideas);
  }

  /** Those that are really different. */
  public List<Invention> different() {
    return ideas.stream().filter(Invention::isNew).toList();
  }

  private Invention keep(Invention idea) {
    ideas.add(idea);
    return idea;
  }
}
