package rasterfit;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.name;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Keeps the engine a plain library whose packages depend in one direction. A package may be absent as long as nothing
 * in it is written yet; the rule for it holds from its first class on.
 */
class EngineArchitectureTest {

    /** Each package may use those before it. */
    private static final List<String> FLOW = List.of(
            "rasterfit.quantity",
            "rasterfit.timing",
            "rasterfit.edid",
            "rasterfit.gear",
            "rasterfit.identify",
            "rasterfit.rule",
            "rasterfit.match",
            "rasterfit.remedy",
            "rasterfit.compare",
            "rasterfit.plan",
            "rasterfit.offer");

    private static final List<String> WITHIN_MATCH =
            List.of("rasterfit.match.route", "rasterfit.match.tune", "rasterfit.match.rank");

    private static final JavaClasses ENGINE = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("rasterfit");

    static Stream<List<String>> aPackageWithAllThatMustNotBeKnownToIt() {
        return Stream.concat(
                Stream.concat(suffixes(FLOW), suffixes(WITHIN_MATCH)),
                // Upkeep stands beside gear, so it knows what gear may know, and gear does not know it.
                Stream.of(
                        List.of("rasterfit.upkeep", "rasterfit.rule", "rasterfit.match", "rasterfit.remedy"),
                        List.of("rasterfit.upkeep", "rasterfit.compare", "rasterfit.plan", "rasterfit.offer"),
                        List.of("rasterfit.gear", "rasterfit.upkeep")));
    }

    private static Stream<List<String>> suffixes(List<String> ordered) {
        return Stream.iterate(0, start -> start < ordered.size() - 1, start -> start + 1)
                .map(start -> ordered.subList(start, ordered.size()));
    }

    @ParameterizedTest
    @MethodSource("aPackageWithAllThatMustNotBeKnownToIt")
    void aPackageKnowsNoLaterOne(List<String> packages) {
        String[] later = packages.stream().skip(1).map(name -> name + "..").toArray(String[]::new);
        noClasses()
                .that()
                .resideInAPackage(packages.get(0) + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(later)
                .allowEmptyShould(true)
                .check(ENGINE);
    }

    @Test
    void theEngineUsesNothingButTheJdkTwoLibrariesOfArithmeticAndNullnessAnnotations() {
        noClasses()
                .should()
                .dependOnClassesThat(resideInAnyPackage(
                                "rasterfit..",
                                "java..",
                                "org.apache.commons.numbers..",
                                "org.apache.commons.statistics..",
                                "org.jspecify.annotations..")
                        .negate()
                        // Arrays of primitives live in no package.
                        .and(resideInAPackage("").negate()))
                .check(ENGINE);
    }

    @Test
    void theEngineTouchesNoNetworkNoDatabaseAndNoFile() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.net..", "java.sql..", "java.nio.file..", "java.nio.channels..")
                .orShould()
                .dependOnClassesThat()
                .haveNameMatching("java\\.io\\.(File.*|RandomAccessFile|Console|Object(In|Out)put.*)")
                .check(ENGINE);
    }

    @Test
    void theEngineReadsNoClockDrawsNoRandomNumberAndPrintsNothing() {
        noClasses()
                .should()
                .callMethodWhere(target(owner(JavaClass.Predicates.type(System.class)))
                        .and(target(name("currentTimeMillis")).or(target(name("nanoTime")))))
                .orShould()
                .callMethodWhere(target(owner(resideInAPackage("java.time.."))).and(target(name("now"))))
                .orShould()
                .callMethod(Math.class, "random")
                .orShould()
                .callConstructor(java.util.Random.class)
                .orShould()
                .dependOnClassesThat()
                .haveFullyQualifiedName("java.util.concurrent.ThreadLocalRandom")
                .orShould()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .check(ENGINE);
    }

    @Test
    void nothingStaticCanBeReassigned() {
        fields().that()
                .areStatic()
                .and()
                .doNotHaveModifier(JavaModifier.SYNTHETIC)
                .should()
                .beFinal()
                .allowEmptyShould(true)
                .check(ENGINE);
    }

    @Test
    void everyPackageIsNullMarked() {
        assertThat(ENGINE.stream().map(JavaClass::getPackage).distinct())
                .isNotEmpty()
                .allSatisfy(found -> assertThat(found.isAnnotatedWith(NullMarked.class))
                        .as(found.getName())
                        .isTrue());
    }
}
