package candlebench.web;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaConstructorCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Who may know whom, and what the pure packages must not touch. Each rule is also shown a class that breaks it. */
class ArchitectureTest {
  private static final String[] PURE = {
    "candlebench.shared..",
    "candlebench.protocol..",
    "candlebench.station.batch..",
    "candlebench.station.guidance..",
    "candlebench.station.record..",
    "candlebench.station.view.."
  };

  /** Values in memory only: bytes and text, never a file or a stream of the world's. */
  private static final String MEMORY =
      "java\\.io\\.(ByteArrayOutputStream|ByteArrayInputStream|OutputStream|"
          + "IOException|UncheckedIOException|Serializable)";

  private static JavaClasses program;
  private static JavaClasses planted;

  @BeforeAll
  static void read() {
    program = new ClassFileImporter()
        .withImportOption(new ImportOption.DoNotIncludeTests())
        .importPackages("candlebench");
    planted = new ClassFileImporter()
        .withImportOption(new ImportOption.OnlyIncludeTests())
        .importPackages("candlebench")
        .that(DescribedPredicate.describe(
            "are planted", each -> each.getSimpleName().startsWith("Planted")));
  }

  static Map<String, ArchRule> rules() {
    Map<String, ArchRule> rules = new LinkedHashMap<>();
    rules.put(
        "shared knows only the JDK",
        knowsOnly("candlebench.shared..", "java..", "candlebench.shared.."));
    rules.put(
        "protocol knows shared",
        knowsOnly(
            "candlebench.protocol..", "java..", "candlebench.shared..", "candlebench.protocol.."));
    rules.put(
        "the simulator cannot share the station's mistakes",
        knowsNone("candlebench.simulator..", "candlebench.station..", "candlebench.web.."));
    rules.put(
        "the station does not know what is simulated",
        knowsNone("candlebench.station..", "candlebench.simulator..", "candlebench.web.."));
    rules.put(
        "batch stands first",
        knowsNone(
            "candlebench.station.batch..",
            "candlebench.station",
            "candlebench.station.guidance..",
            "candlebench.station.journal..",
            "candlebench.station.view..",
            "candlebench.station.link.."));
    rules.put(
        "guidance knows batch",
        knowsNone(
            "candlebench.station.guidance..",
            "candlebench.station",
            "candlebench.station.journal..",
            "candlebench.station.view..",
            "candlebench.station.link.."));
    rules.put(
        "the journal knows guidance",
        knowsNone(
            "candlebench.station.journal..",
            "candlebench.station",
            "candlebench.station.view..",
            "candlebench.station.link.."));
    rules.put(
        "what the record says knows guidance",
        knowsNone(
            "candlebench.station.record..",
            "candlebench.station",
            "candlebench.station.journal..",
            "candlebench.station.view..",
            "candlebench.station.link.."));
    rules.put(
        "the view knows guidance",
        knowsNone(
            "candlebench.station.view..",
            "candlebench.station",
            "candlebench.station.journal..",
            "candlebench.station.link.."));
    rules.put(
        "the link stands apart",
        knowsNone(
            "candlebench.station.link..",
            "candlebench.station",
            "candlebench.station.batch..",
            "candlebench.station.guidance..",
            "candlebench.station.journal..",
            "candlebench.station.view.."));
    rules.put(
        "pure packages touch no file, socket, thread or logger",
        noClasses().that().resideInAnyPackage(PURE).should().dependOnClassesThat(theWorld()));
    rules.put(
        "pure packages read no clock and draw no unseeded lot",
        noClasses()
            .that()
            .resideInAnyPackage(PURE)
            .should()
            .callMethodWhere(target(
                    nameMatching(
                        "now|nanoTime|currentTimeMillis|systemDefault|random|randomUUID|getenv|getProperty"))
                .and(target(owner(resideInAnyPackage("java.time..", "java.lang", "java.util..")))))
            .orShould()
            .callConstructorWhere(unseeded()));
    rules.put(
        "only files named for JSON know it",
        noClasses()
            .that(
                DescribedPredicate.describe("are not named for JSON", each -> !namedForJson(each)))
            .should()
            .dependOnClassesThat()
            .resideInAPackage("com.fasterxml.."));
    rules.put(
        "only practice knows the simulator",
        noClasses()
            .that()
            .resideInAPackage("candlebench.web..")
            .and(DescribedPredicate.describe(
                "are not for practice",
                each -> !outermost(each)
                    .getSimpleName()
                    .matches("(Practice|Demo|Planted.*Practice).*")))
            .should()
            .dependOnClassesThat()
            .resideInAPackage("candlebench.simulator.."));
    rules.put(
        "every class has its module",
        classes()
            .should()
            .resideInAnyPackage(
                "candlebench.shared..",
                "candlebench.protocol..",
                "candlebench.simulator..",
                "candlebench.station..",
                "candlebench.web.."));
    return rules;
  }

  static Iterable<String> names() {
    return rules().keySet();
  }

  @ParameterizedTest
  @MethodSource("names")
  void the_program_keeps_the_rule(String name) {
    rules().get(name).check(program);
  }

  @ParameterizedTest
  @MethodSource("names")
  void a_planted_violation_is_found(String name) {
    assertThat(rules().get(name).evaluate(planted).hasViolation()).as(name).isTrue();
  }

  @Test
  void every_module_is_looked_at() {
    for (String each : new String[] {
      "shared.Mass",
      "protocol.Frame",
      "simulator.VirtualScale",
      "station.Bench",
      "station.link.ScaleLink",
      "web.Main"
    }) assertThat(program.contain("candlebench." + each)).as(each).isTrue();
  }

  private static ArchRule knowsOnly(String who, String... whom) {
    return classes()
        .that()
        .resideInAPackage(who)
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(whom);
  }

  private static ArchRule knowsNone(String who, String... whom) {
    return noClasses()
        .that()
        .resideInAPackage(who)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(whom);
  }

  private static DescribedPredicate<JavaClass> theWorld() {
    DescribedPredicate<JavaClass> world = resideInAnyPackage(
            "java.io..",
            "java.nio.file..",
            "java.nio.channels..",
            "java.net..",
            "java.util.concurrent..",
            "java.util.logging..",
            "java.sql..",
            "org.slf4j..")
        .and(DescribedPredicate.not(nameMatching(MEMORY)));
    return world
        .or(assignableTo(Thread.class))
        .or(assignableTo(ClassLoader.class))
        .as("are of the world outside");
  }

  private static DescribedPredicate<JavaConstructorCall> unseeded() {
    return DescribedPredicate.describe(
        "draw an unseeded lot",
        call -> call.getTargetOwner().isAssignableTo(Random.class)
            && call.getTarget().getRawParameterTypes().isEmpty());
  }

  private static boolean namedForJson(JavaClass each) {
    String name = outermost(each).getSimpleName();
    return name.endsWith("Json") || name.equals("Commands");
  }

  private static JavaClass outermost(JavaClass each) {
    JavaClass outer = each;
    while (outer.getEnclosingClass().isPresent())
      outer = outer.getEnclosingClass().get();
    return outer;
  }
}
