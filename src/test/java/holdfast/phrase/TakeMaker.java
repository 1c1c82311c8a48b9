package holdfast.phrase;

import static holdfast.phrase.SoloMaker.clamp;
import static holdfast.phrase.SoloMaker.gauss;

import holdfast.listening.PlayedNote;
import holdfast.melody.Note;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Makes takes of students who carry an idea of 3 to 7 notes: restated, moved, skewed, stretched,
 * cut short, extended, ornamented, and new phrases among them; played by a keyboard player or heard
 * by a microphone; with or without hesitations.
 *
 * <p>Seeds as in {@link SoloMaker}: below {@link SoloMaker#HOLD_OUT} for setting constants, from
 * there on for measuring.
 *
 * @param ear how the notes reach us
 * @param hesitation chance that a phrase stops a bit too long in its middle
 * @param joined chance that a phrase follows the last one without a rest
 * @param ideaRest chance that the idea itself holds a rest
 */
public record TakeMaker(Ear ear, double hesitation, double joined, double ideaRest) {

  /** How notes reach us. */
  public enum Ear {
    /** Onsets spread by 20 ms, releases by 25 ms. */
    KEYBOARD(0.020, 0.025, 0),
    /** Onsets spread by 45 ms, releases anywhere within 60 ms, 3 % of notes lost or made up. */
    MICROPHONE(0.045, 0.060, 0.03);

    final double onsetSpread;
    final double releaseSpread;
    final double wrong;

    Ear(double onsetSpread, double releaseSpread, double wrong) {
      this.onsetSpread = onsetSpread;
      this.releaseSpread = releaseSpread;
      this.wrong = wrong;
    }
  }

  private static final double[] LENGTHS = {
    0.5, 0.5, 0.5, 1, 1, 1, 1.5, 0.25, 0.75, 2 / 3.0, 1 / 3.0
  };
  private static final double[] LAST = {1, 1.5, 2, 2, 3, 0.5};

  /** Part of the takes in which every note, long ones too, is cut short in proportion. */
  private static final double DETACHED_TAKES = 0.1;

  /** A note as meant: beats in the take. */
  private record Meant(double onset, double length, int pitch, boolean hesitant) {}

  /** The same seed makes the same take. */
  public MadeTake make(long seed) {
    SplittableRandom chance = new SplittableRandom(seed * 31 + 7);
    double bpm = clamp(62 * Math.exp(0.3 * gauss(chance)), 36, 160);
    double beat = 60 / bpm;
    List<Note> idea = idea(chance, beat);
    double articulation = 0.7 + 0.29 * chance.nextDouble();
    List<Meant> meant = new ArrayList<>();
    List<Integer> firstMeant = new ArrayList<>();
    double at = 4;
    int phrases = 14 + chance.nextInt(14);
    for (int p = 0; p < phrases; p++) {
      List<Note> phrase = p == 0 ? idea : treated(chance, idea);
      firstMeant.add(meant.size());
      boolean hesitates = p > 0 && phrase.size() > 2 && chance.nextDouble() < hesitation;
      int where = hesitates ? 1 + chance.nextInt(phrase.size() - 1) : -1;
      for (int i = 0; i < phrase.size(); i++) {
        Note n = phrase.get(i);
        meant.add(new Meant(at + n.onsetBeats(), n.durationBeats(), n.pitch(), i == where));
      }
      double end = at + phrase.get(phrase.size() - 1).endBeats();
      if (chance.nextDouble() < joined) {
        at = end;
      } else {
        // The next restatement begins on a beat, mostly with the bar, after a rest to think in.
        double least = end + Math.max(0.38, 0.5 + 0.2 * gauss(chance)) / beat;
        double grid = chance.nextDouble() < 0.6 ? 4 : chance.nextDouble() < 0.7 ? 1 : 0.5;
        at = Math.ceil(least / grid) * grid;
      }
    }
    return play(chance, idea, meant, firstMeant, bpm, articulation);
  }

  private MadeTake play(
      SplittableRandom chance,
      List<Note> idea,
      List<Meant> meant,
      List<Integer> firstMeant,
      double bpm,
      double articulation) {
    double beat = 60 / bpm;
    boolean detached = chance.nextDouble() < DETACHED_TAKES;
    List<PlayedNote> notes = new ArrayList<>();
    List<Integer> firsts = new ArrayList<>();
    double late = 0;
    boolean phraseStarts = true;
    for (int i = 0; i < meant.size(); i++) {
      Meant m = meant.get(i);
      boolean isFirst = firstMeant.contains(i);
      if (isFirst) {
        // Whoever hesitated catches up in the rest.
        late = Math.max(0, late - Math.max(0, gapBefore(meant, i) * beat - 0.5));
        phraseStarts = true;
      }
      if (m.hesitant()) {
        late += 0.25 + 0.6 * chance.nextDouble();
      }
      if (chance.nextDouble() < ear.wrong / 2) {
        continue;
      }
      double onset = m.onset() * beat + late + ear.onsetSpread * gauss(chance);
      double whole = m.length() * beat;
      double gap = whole * (1 - clamp(articulation + 0.05 * gauss(chance), 0.3, 1));
      if (!detached) {
        // A finger lifts or a tongue strokes in its own time, however long the note.
        gap = Math.min(gap, 0.16 * Math.exp(0.3 * gauss(chance)));
      }
      double sounding = whole - gap;
      double release =
          ear == Ear.MICROPHONE
              ? ear.releaseSpread * (2 * chance.nextDouble() - 1)
              : ear.releaseSpread * gauss(chance);
      if (!notes.isEmpty()) {
        PlayedNote before = notes.get(notes.size() - 1);
        onset = Math.max(onset, before.onsetSeconds() + 0.04);
        if (before.endSeconds() > onset) {
          notes.set(
              notes.size() - 1,
              PlayedNote.key(
                  before.onsetSeconds(), onset - before.onsetSeconds(), before.pitch(), 80));
        }
      }
      if (phraseStarts) {
        firsts.add(notes.size());
        phraseStarts = false;
      }
      double duration = Math.max(0.05, sounding + release);
      if (chance.nextDouble() < ear.wrong / 2 && duration > 0.2) {
        // A made-up note: the ear splits one in two.
        double split = duration * (0.4 + 0.3 * chance.nextDouble());
        notes.add(PlayedNote.key(onset, split, m.pitch(), 80));
        notes.add(PlayedNote.key(onset + split, duration - split, m.pitch() + 1, 80));
      } else {
        notes.add(PlayedNote.key(onset, duration, m.pitch(), 80));
      }
    }
    return new MadeTake(idea, notes, firsts, bpm);
  }

  private static double gapBefore(List<Meant> meant, int i) {
    return i == 0 ? 4 : meant.get(i).onset() - meant.get(i - 1).onset() - meant.get(i - 1).length();
  }

  private List<Note> idea(SplittableRandom chance, double beat) {
    int n = 3 + chance.nextInt(5);
    List<Note> idea = new ArrayList<>();
    double at = 0;
    int pitch = 60 + chance.nextInt(12);
    int restAfter = chance.nextDouble() < ideaRest ? chance.nextInt(n - 1) : -1;
    for (int i = 0; i < n; i++) {
      double length = i == n - 1 ? pick(chance, LAST) : pick(chance, LENGTHS);
      if (beat < 0.6) {
        length = Math.max(length, 0.5);
      }
      idea.add(new Note(at, length, pitch));
      at += length + (i == restAfter ? 0.5 : 0);
      pitch = (int) clamp(pitch + chance.nextInt(11) - 5, 50, 84);
    }
    return idea;
  }

  private static List<Note> treated(SplittableRandom chance, List<Note> idea) {
    double how = chance.nextDouble();
    if (how < 0.16) {
      return idea;
    }
    if (how < 0.40) {
      int by = chance.nextInt(11) - 5;
      return repitched(idea, i -> by);
    }
    if (how < 0.55) {
      int by = chance.nextInt(7) - 3;
      return repitched(idea, i -> by + chance.nextInt(3) - 1);
    }
    if (how < 0.62) {
      return repitched(idea, i -> chance.nextInt(11) - 5);
    }
    if (how < 0.67) {
      return scaled(idea, 2);
    }
    if (how < 0.72) {
      return scaled(idea, 0.5);
    }
    if (how < 0.76) {
      return retrograde(idea);
    }
    if (how < 0.82) {
      return idea.subList(0, Math.max(2, idea.size() - 1 - chance.nextInt(2)));
    }
    if (how < 0.88) {
      return extended(chance, idea);
    }
    if (how < 0.93) {
      return ornamented(idea, chance.nextInt(idea.size() - 1));
    }
    return fresh(chance);
  }

  private static List<Note> repitched(List<Note> idea, java.util.function.IntUnaryOperator by) {
    List<Note> out = new ArrayList<>();
    for (int i = 0; i < idea.size(); i++) {
      Note n = idea.get(i);
      out.add(new Note(n.onsetBeats(), n.durationBeats(), n.pitch() + by.applyAsInt(i)));
    }
    return out;
  }

  private static List<Note> scaled(List<Note> idea, double by) {
    return idea.stream()
        .map(n -> new Note(n.onsetBeats() * by, n.durationBeats() * by, n.pitch()))
        .toList();
  }

  private static List<Note> retrograde(List<Note> idea) {
    List<Note> out = new ArrayList<>();
    double end = idea.get(idea.size() - 1).endBeats();
    for (int i = idea.size() - 1; i >= 0; i--) {
      Note n = idea.get(i);
      out.add(new Note(end - n.endBeats(), n.durationBeats(), n.pitch()));
    }
    return out;
  }

  private static List<Note> extended(SplittableRandom chance, List<Note> idea) {
    List<Note> out = new ArrayList<>(idea.subList(0, idea.size() - 1));
    Note last = idea.get(idea.size() - 1);
    double at = last.onsetBeats();
    int more = 2 + chance.nextInt(2);
    for (int i = 0; i <= more; i++) {
      double length = i == more ? 1.5 : 0.5;
      out.add(new Note(at, length, last.pitch() - 2 * i));
      at += length;
    }
    return out;
  }

  private static List<Note> ornamented(List<Note> idea, int where) {
    List<Note> out = new ArrayList<>();
    for (int i = 0; i < idea.size(); i++) {
      Note n = idea.get(i);
      if (i == where) {
        double half = n.durationBeats() / 2;
        out.add(new Note(n.onsetBeats(), half, n.pitch()));
        out.add(new Note(n.onsetBeats() + half, half, n.pitch() + 2));
      } else {
        out.add(n);
      }
    }
    return out;
  }

  private static List<Note> fresh(SplittableRandom chance) {
    List<Note> out = new ArrayList<>();
    int n = 3 + chance.nextInt(7);
    double at = 0;
    int pitch = 58 + chance.nextInt(16);
    for (int i = 0; i < n; i++) {
      double length = i == n - 1 ? pick(chance, LAST) : pick(chance, LENGTHS);
      out.add(new Note(at, length, pitch));
      at += length;
      pitch = (int) clamp(pitch + chance.nextInt(11) - 5, 50, 84);
    }
    return out;
  }

  private static double pick(SplittableRandom chance, double[] of) {
    return of[chance.nextInt(of.length)];
  }
}
