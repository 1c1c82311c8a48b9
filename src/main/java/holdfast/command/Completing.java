package holdfast.command;

import holdfast.book.Book;
import holdfast.book.KeptTake;
import holdfast.book.TakeFolder;
import holdfast.mistake.UserMistake;
import java.io.PrintWriter;
import java.nio.file.Files;

/** What is added to a take's report once everything has been said, since it takes a moment. */
final class Completing {

  private Completing() {}

  /**
   * Adds the sounds and the paper; a take whose report stays without them is a take all the same.
   */
  static void of(KeptTake kept, PrintWriter out) {
    TakeFolder folder = kept.folder();
    say(
        out,
        "The report can be opened already. I add the sound of each phrase and a PDF to it now; stop"
            + " me if you like, nothing is lost.");
    try {
      kept.complete();
      boolean isRendered = Files.exists(folder.path().resolve(TakeFolder.SOUND));
      say(
          out,
          "Beside it lie "
              + TakeFolder.PAPER
              + " and "
              + (isRendered ? TakeFolder.SOUND : TakeFolder.MIDI)
              + ".");
    } catch (UserMistake e) {
      say(out, "The report stays as it is: " + e.getMessage());
    }
    completeEarlier(out);
  }

  /** A take that was broken off has waited for its sound. */
  private static void completeEarlier(PrintWriter out) {
    try (Book book = Book.open()) {
      for (String take : book.incomplete()) {
        book.complete(take);
        say(out, "I did the same for " + take + ", which was broken off.");
      }
    } catch (UserMistake e) {
      say(out, "An earlier report stays as it is: " + e.getMessage());
    }
  }

  private static void say(PrintWriter out, String sentence) {
    out.println(sentence);
    out.flush();
  }
}
