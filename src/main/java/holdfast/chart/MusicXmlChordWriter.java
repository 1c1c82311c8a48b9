package holdfast.chart;

import holdfast.theory.ChordSymbol;
import holdfast.theory.DegreeChange;
import holdfast.theory.Harmony;
import holdfast.theory.NoteName;
import holdfast.theory.OptionalChord;

/**
 * Writes one {@code harmony} element: root, kind with its printed form, bass, degrees. The printed
 * form says all, so the degrees themselves are not printed.
 */
final class MusicXmlChordWriter {

  private final XmlPage page;

  MusicXmlChordWriter(XmlPage page) {
    this.page = page;
  }

  /** Writes a chord; where it is hidden, it sounds and is not printed. */
  void write(Harmony harmony, boolean hidden) {
    write(harmony, hidden, 0);
  }

  /** As {@link #write(Harmony, boolean)}, so many divisions after the place where it is written. */
  void write(Harmony harmony, boolean hidden, long offset) {
    if (hidden) {
      page.open("harmony", "print-object", "no");
    } else {
      page.open("harmony");
    }
    if (harmony.chord().isPresent()) {
      writeChord(harmony.chord().get(), harmony instanceof OptionalChord);
    } else {
      // "none" has no root; the schema asks for one all the same, printed as nothing.
      page.open("root").leaf("root-step", "C", "text", "").close();
      page.leaf("kind", "none", "text", harmony.text());
    }
    if (offset > 0) {
      page.leaf("offset", String.valueOf(offset));
    }
    page.close();
  }

  private void writeChord(ChordSymbol chord, boolean isOptional) {
    String step = chord.root().letter().name();
    page.open("root");
    if (isOptional) {
      // The parentheses around a chord that may be left out: one before its root, one after its
      // kind.
      page.leaf("root-step", step, "text", "(" + step);
    } else {
      page.leaf("root-step", step);
    }
    writeAlter("root-alter", chord.root());
    page.close();
    String text = chord.kind().suffix() + (isOptional ? ")" : "");
    page.leaf("kind", chord.kind().musicXmlKind(), "text", text);
    if (chord.bass().isPresent()) {
      page.open("bass").leaf("bass-step", chord.bass().get().letter().name());
      writeAlter("bass-alter", chord.bass().get());
      page.close();
    }
    for (DegreeChange change : chord.kind().musicXmlChanges()) {
      page.open("degree", "print-object", "no");
      page.leaf("degree-value", String.valueOf(change.value()));
      page.leaf("degree-alter", String.valueOf(change.alter()));
      page.leaf("degree-type", change.type().text()).close();
    }
  }

  private void writeAlter(String name, NoteName note) {
    if (note.alter() != 0) {
      page.leaf(name, String.valueOf(note.alter()));
    }
  }
}
