package holdfast.report;

import holdfast.chart.WrittenFor;
import holdfast.practice.Plan;
import holdfast.practice.invent.Invented;
import holdfast.report.picture.Clef;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What a take does not know by itself and its report tells: who played, when, on what, for whom the
 * notes are written, and what was before.
 *
 * @param student a first name or nickname
 * @param day when it was played
 * @param input what was listened to, as people call it
 * @param remarks anything else that was found on the way, a sentence each
 * @param reader for which instrument the idea is written
 * @param clef the clef that the reader reads; without one it is chosen by the idea's height
 * @param listening what can be heard of the take
 * @param beside names of files that lie beside the report
 * @param take what the take is called, to be overruled; empty where it is not kept
 * @param progress the student's earlier takes of the same chart
 * @param plan what to practise next, as it was told already; without one it is made from the take
 * @param sung the height of the voice all along, where its sound is there
 * @param invented what was invented, where that was what the take was for
 */
public record Occasion(
    Optional<String> student,
    Optional<LocalDate> day,
    Optional<String> input,
    List<String> remarks,
    WrittenFor reader,
    Optional<Clef> clef,
    Listening listening,
    List<String> beside,
    Optional<String> take,
    Progress progress,
    Optional<Plan> plan,
    Optional<PitchTrace> sung,
    Optional<Invented> invented) {

  /** Nothing is known but the take. */
  public static final Occasion UNKNOWN =
      new Occasion(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          WrittenFor.CONCERT,
          Optional.empty(),
          Listening.NOTHING,
          List.of(),
          Optional.empty(),
          Progress.NONE,
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  /** Copies. */
  public Occasion {
    remarks = List.copyOf(remarks);
    beside = List.copyOf(beside);
  }

  /** A take that somebody played on a day. */
  public static Occasion of(Optional<String> student, LocalDate day) {
    return UNKNOWN.by(student).on(day);
  }

  /** The same, played by somebody. */
  public Occasion by(Optional<String> who) {
    return new Occasion(
        who, day, input, remarks, reader, clef, listening, beside, take, progress, plan, sung,
        invented);
  }

  /** The same on a day. */
  public Occasion on(LocalDate when) {
    return new Occasion(
        student,
        Optional.of(when),
        input,
        remarks,
        reader,
        clef,
        listening,
        beside,
        take,
        progress,
        plan,
        sung,
        invented);
  }

  /** The same, heard by some input. */
  public Occasion through(String name) {
    return new Occasion(
        student,
        day,
        Optional.of(name),
        remarks,
        reader,
        clef,
        listening,
        beside,
        take,
        progress,
        plan,
        sung,
        invented);
  }

  /** The same with remarks. */
  public Occasion remarking(List<String> sentences) {
    return new Occasion(
        student, day, input, sentences, reader, clef, listening, beside, take, progress, plan, sung,
        invented);
  }

  /** The same, written for an instrument. */
  public Occasion writtenFor(WrittenFor instrument, Optional<Clef> reading) {
    return new Occasion(
        student,
        day,
        input,
        remarks,
        instrument,
        reading,
        listening,
        beside,
        take,
        progress,
        plan,
        sung,
        invented);
  }

  /** The same after earlier takes. */
  public Occasion after(Progress earlier) {
    return new Occasion(
        student, day, input, remarks, reader, clef, listening, beside, take, earlier, plan, sung,
        invented);
  }

  /** The same, to be listened to. */
  public Occasion heardAs(Listening sound) {
    return new Occasion(
        student, day, input, remarks, reader, clef, sound, beside, take, progress, plan, sung,
        invented);
  }

  /** The same, kept under a name with files beside the report. */
  public Occasion keptAs(String name, List<String> files) {
    return new Occasion(
        student,
        day,
        input,
        remarks,
        reader,
        clef,
        listening,
        files,
        Optional.of(name),
        progress,
        plan,
        sung,
        invented);
  }

  /** The same with the plan that the student was told. */
  public Occasion planning(Optional<Plan> next) {
    return new Occasion(
        student, day, input, remarks, reader, clef, listening, beside, take, progress, next, sung,
        invented);
  }

  /** The same with the height of the voice all along. */
  public Occasion sungAt(Optional<PitchTrace> heights) {
    return new Occasion(
        student, day, input, remarks, reader, clef, listening, beside, take, progress, plan,
        heights, invented);
  }

  /** The same as a session of inventing. */
  public Occasion inventing(Optional<Invented> ideas) {
    return new Occasion(
        student, day, input, remarks, reader, clef, listening, beside, take, progress, plan, sung,
        ideas);
  }
}
