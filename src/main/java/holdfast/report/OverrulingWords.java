package holdfast.report;

import holdfast.motif.Family;
import holdfast.motif.Treatment;
import holdfast.session.JudgedPhrase;
import holdfast.session.Overruling;
import java.util.ArrayList;
import java.util.List;

/** A teacher's word on a phrase, as the student reads it. */
final class OverrulingWords {

  private OverrulingWords() {}

  /** A few words for a table. */
  static String inATable(Overruling ruling) {
    return ruling
        .words()
        .orElseGet(
            () -> ruling.treatment().map(Treatment::word).orElse("as your teacher hears it"));
  }

  /** Why a phrase is told as it is: the teacher's word first, then what was heard. */
  static List<String> why(JudgedPhrase phrase) {
    if (phrase.overruled().isEmpty()) {
      return phrase.why();
    }
    Overruling ruling = phrase.overruled().get().by();
    List<String> sentences = new ArrayList<>();
    String how =
        ruling
            .treatment()
            .filter(treatment -> treatment != Treatment.NEW)
            .map(treatment -> " (" + treatment.word() + ")")
            .orElse("");
    sentences.add("Your teacher hears this phrase as " + ruling.family().word() + how + ".");
    ruling.words().ifPresent(words -> sentences.add("“" + words + "”"));
    Family heard = phrase.heard().family();
    sentences.add(
        "I had heard it as " + heard.word() + ": " + TreatmentWords.of(phrase.heard()) + ".");
    return List.copyOf(sentences);
  }
}
