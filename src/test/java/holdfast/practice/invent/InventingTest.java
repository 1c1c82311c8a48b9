package holdfast.practice.invent;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.backing.Arrangement;
import holdfast.backing.Performance;
import holdfast.backing.Playback;
import holdfast.backing.SoundPlayer;
import holdfast.chart.Changes;
import holdfast.chart.ChartText;
import holdfast.listening.keyboard.TestCable;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.motif.Context;
import holdfast.motif.Player;
import holdfast.practice.Hands;
import holdfast.practice.SteppedOut;
import holdfast.practice.WatchedBand;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.session.Keeper;
import holdfast.session.Moment;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.PitchClassSet;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InventingTest {

  private static final Changes DM7 = Changes.vamp(Harmony.parse("Dm7"), Optional.empty());

  private static final String FIRST = "D4/0.5 F4/0.5 A4 G4/0.5 F4/1.5";
  private static final String OCTAVE_UP = "D5/0.5 F5/0.5 A5 G5/0.5 F5/1.5";
  private static final String OTHER = "C5/1.5 A4/0.25 B4/0.25 E4 A4";

  @TempDir Path folder;

  @AfterEach
  void pullOut() {
    TestCable.pullOut();
  }

  @Test
  void the_same_idea_in_other_clothes_is_told_kindly_and_counted_once() {
    Inventing session = session();
    List<String> said = new ArrayList<>();
    for (String idea :
        List.of(
            FIRST,
            OTHER,
            OCTAVE_UP,
            "F4/0.5 Ab4/0.5 C5 Bb4/0.5 Ab4/1.5",
            "D4 F4 A4/2 G4 F4/3",
            "D4/0.5 F4/0.5 A4/0.75 Bb4/0.25 G4/0.5 F4/1.5",
            FIRST,
            "B3/0.5 D4/0.5 F#4 E4/0.5 D4/1.5",
            "D3/0.5 F3/0.5 A3 G3/0.5 F3/1.5",
            "D4/0.25 F4/0.25 A4/0.5 G4/0.25 F4/0.75")) {
      said.add(session.hear(IdeaNotation.parse(idea)).sentence());
    }
    assertEquals("Number 1, your first idea.", said.get(0));
    assertTrue(
        said.get(1).startsWith("Number 2 is new: another rhythm, another shape"), said.get(1));
    List<String> clothes =
        List.of(
            "in a higher octave",
            "moved up",
            "slower",
            "with something added",
            "just as it was",
            "moved down",
            "in a lower octave",
            "faster");
    for (int i = 0; i < clothes.size(); i++) {
      assertEquals(
          "Number "
              + (i + 3)
              + " is number 1 again, "
              + clothes.get(i)
              + ". You know that one well; what else comes?",
          said.get(i + 2));
    }
    assertEquals(2, session.different().size());
  }

  @Test
  void the_plain_one_may_come_after_the_one_with_more_notes() {
    String ornamented = "D4/0.5 F4/0.5 A4/0.75 Bb4/0.25 G4/0.5 F4/1.5";
    assertEquals(Optional.of(Clothes.LEFT_OUT), heardAfter(ornamented, FIRST).clothes());
    String twoMore = "D4/0.5 F4/0.5 A4/0.5 B4/0.25 A4/0.25 G4/0.5 F4/1.5";
    assertEquals(Optional.of(Clothes.ADDED), heardAfter(FIRST, twoMore).clothes());
  }

  private static Invention heardAfter(String first, String second) {
    Inventing session = session();
    session.hear(IdeaNotation.parse(first));
    return session.hear(IdeaNotation.parse(second));
  }

  @Test
  void what_makes_two_ideas_different_is_named() {
    assertEquals(
        Set.of(Difference.RHYTHM), differences("C4 E4 G4", "C4/2 E4/0.5 G4"), "the lengths alone");
    assertEquals(Set.of(Difference.SHAPE), differences("E4 C4 G4", "E4 G4 C4"));
    assertEquals(Set.of(Difference.RANGE), differences("C4 D4 C4", "C4 A4 C4"));
    assertEquals(Set.of(Difference.START), differences("C4 D4 C4", "D4 E4 D4"));
    assertEquals(Set.of(), differences("C4 E4 G4", "C5/2 E5/2 G5/2"), "tempo and octave aside");
  }

  @Test
  void starters_give_a_frame_of_every_kind_and_notes_of_the_chords_scale() {
    List<Starter> starters = Starter.shuffled(DM7, 7);
    Set<Starter.Kind> first = new HashSet<>();
    starters.subList(0, 5).forEach(s -> first.add(s.kind()));
    assertEquals(Set.of(Starter.Kind.values()), first, "each kind comes before one comes again");
    assertFalse(starters.equals(Starter.shuffled(DM7, 8)), "another day, another order");
    PitchClassSet dorian = Key.parse("Dm (Dorian)").scale();
    for (Starter starter : starters) {
      if (starter.kind() == Starter.Kind.NOTES) {
        String notes = starter.sentence().replaceAll(".*: |\\.$", "");
        for (String name : notes.split(", ", -1)) {
          int pitch = IdeaNotation.parse(name + "4").get(0).pitch();
          assertTrue(dorian.contains(pitch), starter.sentence());
        }
      }
    }
  }

  @Test
  void a_session_live_keeps_every_idea_and_its_file_reads_back() throws Exception {
    TestCable.plugIn();
    Arrangement arrangement =
        Arrangement.of(
            ChartText.parse("title: Inventing\ntempo: 60\n\n| Dm7 | Dm7 |\n", "InventingTest"));
    Performance performance = new Performance(arrangement, OptionalInt.of(3), 0, Set.of());
    SteppedOut out = new SteppedOut();
    Playback[] running = new Playback[1];
    Hands hands = new Hands(out, () -> running[0]);
    hands.play(at(FIRST, 0));
    hands.play(at(OTHER, 8));
    hands.play(at(OCTAVE_UP, 16));
    Told told = new Told();
    JudgedTake take;
    InventingTake session;
    try (SoundPlayer player = new SoundPlayer(out)) {
      session = new InventingTake(performance, Player.KEYBOARD, told, Keeper.NOBODY, 1);
      take = session.play(new WatchedBand(player, playback -> running[0] = playback), hands);
    }
    assertEquals(3, take.phrases().size());
    assertEquals(3, told.ideas.size());
    assertEquals(OptionalInt.of(1), told.ideas.get(2).sameAs());
    assertEquals(List.of(), told.notices, "nothing is said about taking a new idea");

    Path file = folder.resolve(Invented.FILE);
    Files.writeString(file, Invented.json(session.inventing(), List.of("Dm7"), take));
    Invented read = Invented.read(file);
    assertEquals(3, read.said());
    assertEquals(2, read.different());
    assertEquals(started(IdeaNotation.parse(FIRST)), started(read.ideas().get(1)));
  }

  private static final class Told implements InventingAudience {
    final List<Invention> ideas = new ArrayList<>();
    final List<String> notices = new ArrayList<>();

    @Override
    public void invented(Invention idea) {
      ideas.add(idea);
    }

    @Override
    public void starter(Starter starter) {
      // Nobody is stuck for so long.
    }

    @Override
    public void moment(Moment moment) {
      // Nobody looks.
    }

    @Override
    public void phrase(JudgedPhrase phrase) {
      // It is told as an idea.
    }

    @Override
    public void notice(String sentence) {
      notices.add(sentence);
    }

    @Override
    public Optional<Wish> wish() {
      return Optional.empty();
    }
  }

  private static Inventing session() {
    return new Inventing(new Sameness(Context.over(DM7, Player.KEYBOARD, 4)));
  }

  /** Fingers lift before a note's written end; when which note starts is what was meant. */
  private static List<String> started(List<Note> notes) {
    return notes.stream().map(n -> n.onsetBeats() + " " + n.pitch()).toList();
  }

  private static Set<Difference> differences(String one, String other) {
    return Difference.between(IdeaNotation.parse(one), IdeaNotation.parse(other));
  }

  private static List<Note> at(String idea, double beat) {
    return IdeaNotation.parse(idea).stream()
        .map(n -> new Note(n.onsetBeats() + beat, n.durationBeats(), n.pitch()))
        .toList();
  }
}
