package holdfast.book;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import holdfast.backing.Arrangement;
import holdfast.backing.BarRange;
import holdfast.backing.Feel;
import holdfast.backing.Performance;
import holdfast.chart.Chart;
import holdfast.chart.ChartText;
import holdfast.disk.JsonPlace;
import holdfast.melody.IdeaNotation;
import holdfast.melody.Note;
import holdfast.mistake.UserMistake;
import holdfast.motif.Motif;
import holdfast.motif.Player;
import holdfast.session.Setting;
import holdfast.time.TempoMap;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What was agreed before a take began: all that is needed to judge its notes again, on any machine.
 * Kept as {@code take.settings} in the folder of the take, as JSON.
 *
 * @param started when, by the clock of the machine it was played on, to the second
 * @param student a first name or nickname
 * @param title of the chart
 * @param chartText the whole chart, as {@link ChartText} writes it
 * @param feel of the backing
 * @param bars the bars that went round
 * @param tempo where the beats fell in the seconds of the take
 * @param player how exactly this player's notes can be taken
 * @param input what was listened to, as a keyboard or a microphone calls itself
 * @param way the way of practising by its word, where one was chosen
 * @param idea the idea that was given, as {@link IdeaNotation} writes it
 * @param assignment the number of the assignment that the take answers
 */
public record TakeSettings(
    LocalDateTime started,
    Optional<String> student,
    String title,
    String chartText,
    Feel feel,
    BarRange bars,
    TempoMap tempo,
    Player player,
    String input,
    Optional<String> way,
    Optional<String> idea,
    Optional<String> assignment) {

  /** Nobody plays longer than a day at a stretch; in seconds. */
  private static final double LONGEST_SECONDS = 24 * 3600.0;

  /** Beats a minute; a player who is followed may hurry past the fastest backing, not past this. */
  private static final double FASTEST = 4 * Arrangement.FASTEST;

  /** As many beats has a day at that tempo. */
  private static final double MOST_BEATS = LONGEST_SECONDS * FASTEST / 60;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** Cut to seconds. */
  public TakeSettings {
    started = started.truncatedTo(ChronoUnit.SECONDS);
    student = student.map(Student::cleanName);
  }

  /** What is known when a take begins now. */
  public static TakeSettings of(
      LocalDateTime started,
      Setting setting,
      Performance performance,
      String input,
      Optional<String> student) {
    return new TakeSettings(
        started,
        student,
        setting.chart().title(),
        ChartText.print(setting.chart()),
        performance.arrangement().feel(),
        performance.arrangement().bars(),
        setting.beats(),
        setting.player(),
        input,
        Optional.empty(),
        setting.givenIdea().map(Motif::notes).map(IdeaNotation::print),
        Optional.empty());
  }

  /** The same, practised in a way that has this word. */
  public TakeSettings practisedBy(Optional<String> word) {
    return new TakeSettings(
        started,
        student,
        title,
        chartText,
        feel,
        bars,
        tempo,
        player,
        input,
        word,
        idea,
        assignment);
  }

  /** The same, in answer to an assignment. */
  public TakeSettings answering(Optional<String> number) {
    return new TakeSettings(
        started, student, title, chartText, feel, bars, tempo, player, input, way, idea, number);
  }

  /** The same, by somebody else. */
  public TakeSettings by(Optional<String> other) {
    return new TakeSettings(
        started, other, title, chartText, feel, bars, tempo, player, input, way, idea, assignment);
  }

  /** The same with its beats elsewhere. */
  public TakeSettings inTempo(TempoMap other) {
    return new TakeSettings(
        started,
        student,
        title,
        chartText,
        feel,
        bars,
        other,
        player,
        input,
        way,
        idea,
        assignment);
  }

  /** The chart, read. */
  public Chart chart() {
    return ChartText.parse(chartText, "the chart of the take");
  }

  /** The backing that was played over. */
  public Arrangement arrangement() {
    return Arrangement.of(chart(), feel, tempo.openingTempo(), Optional.of(bars), Optional.empty());
  }

  /** The backing as long as the take needs it. */
  public Performance performance() {
    return new Performance(arrangement(), OptionalInt.empty(), 0, Set.of());
  }

  /** What the coach has to know before the first note. */
  public Setting setting() {
    Arrangement arrangement = arrangement();
    Optional<Motif> given =
        idea.map(IdeaNotation::parse)
            .map(notes -> Motif.over(arrangement.changes().at(0).harmony(), notes));
    return Setting.of(arrangement, tempo, player, given);
  }

  /** The idea that was given, read. */
  public Optional<List<Note>> givenNotes() {
    return idea.map(IdeaNotation::parse);
  }

  /** As JSON text. */
  public String json() {
    ObjectNode root = MAPPER.createObjectNode();
    root.put("started", started.toString());
    student.ifPresent(name -> root.put("student", name));
    root.put("title", title);
    root.put("feel", feel.word());
    root.put("bars", bars.first() + ".." + bars.last());
    ArrayNode beats = root.putArray("tempo");
    for (TempoMap.Point point : tempo.points()) {
      beats
          .addObject()
          .put("beat", point.beat())
          .put("seconds", point.seconds())
          .put("beatsPerMinute", point.beatsPerMinute());
    }
    root.put("player", player.name());
    root.put("input", input);
    way.ifPresent(word -> root.put("way", word));
    idea.ifPresent(notes -> root.put("idea", notes));
    assignment.ifPresent(number -> root.put("assignment", number));
    ArrayNode lines = root.putArray("chart");
    chartText.lines().forEach(lines::add);
    return root.toPrettyString() + "\n";
  }

  /**
   * Reads what {@link #json} wrote.
   *
   * @param where the file, for the sentence about a mistake in it
   * @throws UserMistake where the text is not such
   */
  public static TakeSettings parse(String json, String where) {
    try {
      return read(MAPPER.readTree(json));
    } catch (JsonProcessingException e) {
      throw new UserMistake(
          where
              + ", line "
              + JsonPlace.line(e)
              + ": this is no JSON; bring back the file that the take left",
          e);
    } catch (IllegalArgumentException | DateTimeException e) {
      throw new UserMistake(
          where + " cannot be understood (" + e.getMessage() + "); bring back its old text", e);
    }
  }

  private static TakeSettings read(JsonNode root) {
    List<String> lines = new ArrayList<>();
    root.path("chart").forEach(line -> lines.add(line.asText()));
    if (lines.isEmpty()) {
      throw new IllegalArgumentException("its chart is missing");
    }
    List<TempoMap.Point> beats = new ArrayList<>();
    for (JsonNode point : root.path("tempo")) {
      beats.add(
          new TempoMap.Point(
              within(number(point, "beat"), MOST_BEATS),
              within(number(point, "seconds"), LONGEST_SECONDS),
              within(number(point, "beatsPerMinute"), FASTEST)));
    }
    return new TakeSettings(
        LocalDateTime.parse(root.path("started").asText()),
        text(root, "student"),
        root.path("title").asText(),
        String.join("\n", lines) + "\n",
        Feel.read(root.path("feel").asText()).orElse(Feel.PLAIN),
        BarRange.parse(root.path("bars").asText()),
        new TempoMap(beats),
        Player.valueOf(root.path("player").asText(Player.UNKNOWN.name())),
        root.path("input").asText(),
        text(root, "way"),
        text(root, "idea"),
        text(root, "assignment"));
  }

  private static double within(double number, double most) {
    if (!(Math.abs(number) <= most)) {
      throw new IllegalArgumentException("its tempo has " + number + ", where no take gets to");
    }
    return number;
  }

  private static double number(JsonNode point, String name) {
    return point.path(name).asDouble(Double.NaN);
  }

  private static Optional<String> text(JsonNode root, String name) {
    return Optional.ofNullable(root.path(name).textValue()).filter(text -> !text.isBlank());
  }
}
