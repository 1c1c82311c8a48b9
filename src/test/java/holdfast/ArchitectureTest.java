package holdfast;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The shape of the house: dependencies point one way, and the middle is pure. */
class ArchitectureTest {

  /** From the ground up: a package may use those in front of it, never those behind it. */
  private static final List<String> FLOORS =
      List.of(
          "mistake",
          "disk",
          "theory",
          "time",
          "melody",
          "chart",
          "backing",
          "listening",
          "phrase",
          "harmony",
          "motif",
          "carry",
          "session",
          "practice",
          "report",
          "book",
          "window",
          "command");

  private static final JavaClasses HOUSE =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("holdfast");

  @Test
  void no_package_uses_one_that_stands_above_it() {
    for (int floor = 0; floor < FLOORS.size(); floor++) {
      String[] above =
          FLOORS.subList(floor + 1, FLOORS.size()).stream()
              .map(name -> "holdfast." + name + "..")
              .toArray(String[]::new);
      if (above.length > 0) {
        noClasses()
            .that()
            .resideInAPackage("holdfast." + FLOORS.get(floor) + "..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(above)
            .allowEmptyShould(true)
            .check(HOUSE);
      }
    }
  }

  @Test
  void backing_and_listening_do_not_know_each_other() {
    noClasses()
        .that()
        .resideInAPackage("holdfast.listening..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("holdfast.backing..")
        .allowEmptyShould(true)
        .check(HOUSE);
  }

  @Test
  void packages_form_no_cycles() {
    slices().matching("holdfast.(*)..").should().beFreeOfCycles().check(HOUSE);
  }

  @Test
  void the_middle_knows_no_threads_devices_clocks_or_files() {
    noClasses()
        .that()
        .resideInAnyPackage(
            "holdfast.theory..",
            "holdfast.time..",
            "holdfast.melody..",
            "holdfast.phrase..",
            "holdfast.harmony..",
            "holdfast.motif..",
            "holdfast.carry..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("javax.sound..", "java.nio.file..", "java.util.concurrent.locks..")
        .orShould()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.lang.Thread")
        .orShould()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .allowEmptyShould(true)
        .check(HOUSE);
  }

  /** Nothing leaves the machine; see also {@code NoNetworkTest}. */
  @Test
  void no_class_of_ours_knows_sockets() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .haveNameMatching(
            "java\\.net\\.(Socket|ServerSocket|DatagramSocket|MulticastSocket|HttpURLConnection"
                + "|URLConnection|http\\..*)|java\\.nio\\.channels\\..*Socket.*|javax\\.net\\..*")
        .check(HOUSE);
  }

  @Test
  void every_package_of_ours_stands_on_a_floor() {
    List<String> strangers =
        HOUSE.stream()
            .map(c -> c.getPackageName().split("\\.", -1))
            .filter(p -> p.length > 1)
            .map(p -> p[1])
            .distinct()
            .filter(name -> !FLOORS.contains(name))
            .toList();
    org.junit.jupiter.api.Assertions.assertEquals(List.of(), strangers);
  }
}
