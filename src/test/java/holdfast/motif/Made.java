package holdfast.motif;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** Verdicts written by hand. */
final class Made {

  private Made() {}

  static NoteChange change(NoteChange.Kind kind, int idea, int phrase, int semitones) {
    return new NoteChange(kind, OptionalInt.of(idea), OptionalInt.of(phrase), semitones);
  }

  static NoteChange kept(int idea, int phrase) {
    return change(NoteChange.Kind.KEPT, idea, phrase, 0);
  }

  static NoteChange added(int phrase) {
    return new NoteChange(NoteChange.Kind.ADDED, OptionalInt.empty(), OptionalInt.of(phrase), 0);
  }

  static NoteChange dropped(int idea) {
    return new NoteChange(NoteChange.Kind.DROPPED, OptionalInt.of(idea), OptionalInt.empty(), 0);
  }

  static Verdict verdict(Treatment treatment, NoteChange... changes) {
    return verdict(treatment, 0, 0, 0, 1, "", changes);
  }

  static Verdict verdict(
      Treatment treatment,
      int transposition,
      int steps,
      double shift,
      double scale,
      String detail,
      NoteChange... changes) {
    Map<Treatment, Double> p = new EnumMap<>(Treatment.class);
    p.put(treatment, 1.0);
    return new Verdict(
        treatment,
        treatment.family(),
        transposition,
        steps,
        shift,
        scale,
        1,
        1,
        p,
        1,
        new Evidence(1, 1, 1),
        List.of(changes),
        Material.MELODY,
        detail);
  }
}
