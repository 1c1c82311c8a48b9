package holdfast.listening.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import holdfast.mistake.UserMistake;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The profiles that ship, against other people's tables. */
class ProfileTest {

  /** A profile of voices of one kind may reach further down than any one of them. */
  private static final int OCTAVE = 12;

  private record Fact(
      String kind, String name, String profile, int transposition, int lowest, int highest) {}

  private static List<Fact> facts() throws IOException {
    try (var in = ProfileTest.class.getResourceAsStream("/reference/instrument-ranges.csv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#") && !line.isBlank())
          .map(line -> line.split(";", -1))
          .map(
              f ->
                  new Fact(
                      f[0],
                      f[1],
                      f[2],
                      Integer.parseInt(f[3]),
                      Integer.parseInt(f[4]),
                      Integer.parseInt(f[5])))
          .toList();
    }
  }

  @Test
  void each_instruments_range_and_transposition_are_those_of_the_tables() throws IOException {
    for (Fact fact : facts()) {
      if (fact.kind().equals("instrument")) {
        Profile profile = Profile.named(fact.profile());
        assertEquals(fact.lowest(), profile.lowest(), fact.name());
        assertEquals(fact.highest(), profile.highest(), fact.name());
        assertEquals(fact.transposition(), profile.writtenToSounding(), fact.name());
      }
    }
  }

  @Test
  void each_voice_of_the_tables_fits_into_its_profile() throws IOException {
    for (Fact fact : facts()) {
      if (fact.kind().equals("voice")) {
        Profile profile = Profile.named(fact.profile());
        assertTrue(profile.lowest() <= fact.lowest(), fact.name());
        assertTrue(profile.highest() >= fact.highest(), fact.name());
        assertTrue(profile.lowest() >= fact.lowest() - OCTAVE, fact.name());
        assertTrue(profile.sings(), fact.name());
      }
    }
  }

  @Test
  void every_profile_but_the_whistle_is_held_against_a_table() throws IOException {
    TreeSet<String> checked = new TreeSet<>(facts().stream().map(Fact::profile).toList());
    checked.add("whistle");
    assertEquals(new TreeSet<>(Profile.names()), checked);
  }

  @Test
  void a_gate_lies_between_a_whisper_and_a_shout() {
    for (String name : Profile.names()) {
      double gate = Profile.named(name).gateDb();
      assertTrue(gate >= 3 && gate <= 20, name + " " + gate);
    }
  }

  /** The brief's vibrato: up to 100 cents each way. */
  @Test
  void voices_are_smoothed_over_their_vibrato_and_keys_not_at_all() {
    for (String name : Profile.names()) {
      Profile profile = Profile.named(name);
      double smoothing = profile.manner().smoothingCents();
      assertTrue(!profile.sings() || smoothing > 200, name + " " + smoothing);
    }
    assertEquals(0, Profile.named("keyboard").manner().smoothingCents());
    assertEquals(0, Profile.named("guitar").manner().smoothingCents());
  }

  @Test
  void a_spoilt_line_is_named_with_its_number() {
    UserMistake told =
        assertThrows(
            UserMistake.class, () -> Profile.parse("x", "lowest = 40\nhighest: 80\n", "x.profile"));
    assertEquals(
        "x.profile, line 2: write \"key = number\", not \"highest: 80\"", told.getMessage());
  }
}
