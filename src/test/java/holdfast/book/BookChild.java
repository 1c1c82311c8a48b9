package holdfast.book;

import holdfast.listening.Heard;
import holdfast.listening.PlayedNote;
import holdfast.practice.Plan;
import holdfast.session.Coach;
import holdfast.session.JudgedTake;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A program that works on a book until it is killed, and says what it has done. */
final class BookChild {

  private BookChild() {}

  /** What to do, and where. */
  public static void main(String[] args) throws IOException {
    Path home = Path.of(args[1]);
    switch (args[0]) {
      case "record" -> record(home);
      case "index" -> index(home);
      case "delete" -> delete(home);
      case "complete" -> complete(home);
      default -> throw new IllegalArgumentException(args[0]);
    }
  }

  private static void say(String words) {
    System.out.println(words);
    System.out.flush();
  }

  /** Take after take, phrase after phrase; each note is said once its phrase has ended. */
  private static void record(Path home) throws IOException {
    for (int day = 0; ; day++) {
      TakeSettings settings = MadeTakes.settings("Mira", day);
      try (KeptTake take =
          KeptTake.begin(home.resolve(Book.TAKES), settings, MadeTakes.PERFORMANCE)) {
        List<PlayedNote> heard = new ArrayList<>();
        for (PlayedNote note : MadeTakes.notes()) {
          take.hear(Heard.recording(List.of(note)));
          heard.add(note);
          if (heard.size() % 4 == 0) {
            take.phraseEnded(note.endSeconds());
            say(take.folder().name() + " " + heard.size());
          }
        }
        JudgedTake judged = Coach.judge(MadeTakes.SETTING, heard, phrase -> {});
        take.finish(judged, Optional.empty());
        say(take.folder().name() + " " + heard.size());
      }
    }
  }

  /** Take after take with its plan, its sound and its paper. */
  private static void complete(Path home) throws IOException {
    for (int day = 0; ; day++) {
      TakeFolder folder = planned(home, day);
      say("played " + folder.name());
      try (Book book = Book.open(home)) {
        book.complete(folder.name());
      }
      say("completed " + folder.name());
    }
  }

  private static TakeFolder planned(Path home, int day) throws IOException {
    TakeSettings settings = MadeTakes.settings("Mira", day);
    try (KeptTake take =
        KeptTake.begin(home.resolve(Book.TAKES), settings, MadeTakes.PERFORMANCE)) {
      take.hear(Heard.recording(MadeTakes.notes()));
      JudgedTake judged =
          Coach.judge(MadeTakes.SETTING, MadeTakes.notes(), phrase -> take.phraseEnded(0));
      Plan plan = Plan.after(judged, "Paper Boats");
      take.finish(judged, MadeTakes.PERFORMANCE, Optional.empty(), Optional.of(plan));
      return take.folder();
    }
  }

  /** Throws the table away and makes it anew, again and again, with changes to take in. */
  private static void index(Path home) {
    for (int i = 0; ; i++) {
      try (Book book = Book.open(home)) {
        book.take(book.find(Search.ALL).get(0).take()).note("round " + i);
        book.refresh();
        say("indexed");
        book.readAgain();
        say("again");
      }
    }
  }

  /** Deletes Mira, who is there. */
  private static void delete(Path home) {
    try (Book book = Book.open(home)) {
      say("begin");
      say("gone " + book.forget("Mira"));
    }
  }
}
