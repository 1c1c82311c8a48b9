package holdfast.report;

import static j2html.TagCreator.code;
import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.li;
import static j2html.TagCreator.ol;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.strong;
import static j2html.TagCreator.text;

import holdfast.harmony.ToneName;
import holdfast.melody.Note;
import holdfast.practice.invent.Difference;
import holdfast.practice.invent.Invented;
import holdfast.session.JudgedPhrase;
import holdfast.session.JudgedTake;
import holdfast.theory.Harmony;
import holdfast.theory.Key;
import holdfast.theory.NoChord;
import holdfast.theory.SpelledPitch;
import j2html.tags.DomContent;
import j2html.tags.specialized.LiTag;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.stream.Collectors;

/** What came of a session of inventing: its ideas, one by one, and how to take one further. */
final class InventedSection {

  private static final int SHAPE_WIDTH = 150;
  private static final int SHAPE_HEIGHT = 60;

  private InventedSection() {}

  /** The session in two sentences. */
  static List<String> sentences(Invented session) {
    String over = String.join(" and ", session.chords());
    if (session.different() == 0) {
      return List.of("I heard no idea over " + over + " this time; a short one is enough.");
    }
    String found =
        session.different() == 1
            ? "You found one idea over " + over + "."
            : "You found " + session.different() + " different ideas over " + over + ".";
    int again = session.said() - session.different();
    return again == 0
        ? List.of(found)
        : List.of(
            found,
            again == 1
                ? "One of them you said once more."
                : again + " times you came back to one you had.");
  }

  static DomContent of(JudgedTake take, Invented session, Listening listening, Pictures pictures) {
    if (session.ideas().isEmpty()) {
      return text("");
    }
    return section(
            h2("Your ideas"),
            ol(
                each(
                    session.ideas().entrySet(),
                    idea -> idea(take, session, idea.getKey(), listening, pictures))),
            h2("Next practice"),
            p("Carry one of them through a tune; the number is the idea's."),
            div(code(
                    "holdfast practise head-start lantern-turn --invented "
                        + session.ideas().lastKey()))
                .withClass("command"),
            h2("How this was judged"),
            p(
                "Two ideas are different where one does not restate the other, moved or skewed. Which"
                    + " is the more beautiful this cannot know; your ear and your teacher's decide."))
        .withClass("invented");
  }

  private static LiTag idea(
      JudgedTake take, Invented session, int number, Listening listening, Pictures pictures) {
    List<Note> notes = session.ideas().get(number);
    Optional<JudgedPhrase> played = playedAs(take, notes);
    Harmony over =
        played.<Harmony>map(phrase -> phrase.mainChord().harmony()).orElse(NoChord.SILENT);
    Optional<Key> key = take.setting().changes().key();
    String names =
        notes.stream()
            .map(n -> SpelledPitch.of(n.pitch(), ToneName.name(n.pitch(), over, key)).display())
            .collect(Collectors.joining(" "));
    DomContent sound =
        played
            .map(phrase -> PhraseTable.sound(phrase, "idea " + number, listening))
            .orElse(text(""));
    return li().attr("value", number)
        .with(
            pictures.idea(
                "idea" + number,
                "The shape of idea " + number + ": " + names,
                SHAPE_WIDTH,
                SHAPE_HEIGHT,
                notes),
            p(strong(names)),
            p("Say it: " + RhythmWords.of(notes)),
            difference(session, number),
            sound);
  }

  /** What makes it another than the one before; nothing for the first. */
  private static DomContent difference(Invented session, int number) {
    SortedMap<Integer, List<Note>> before = session.ideas().headMap(number);
    if (before.isEmpty()) {
      return text("");
    }
    Set<Difference> found =
        Difference.between(before.get(before.lastKey()), session.ideas().get(number));
    String words =
        found.isEmpty()
            ? "other steps"
            : Difference.inOrder(found).map(Difference::words).collect(Collectors.joining(", "));
    return p("Beside number " + before.lastKey() + ": " + words + ".").withClass("quiet");
  }

  /** Where it was played first. */
  private static Optional<JudgedPhrase> playedAs(JudgedTake take, List<Note> notes) {
    List<Integer> pitches = notes.stream().map(Note::pitch).toList();
    return take.phrases().stream()
        .filter(phrase -> phrase.notes().stream().map(Note::pitch).toList().equals(pitches))
        .findFirst();
  }
}
