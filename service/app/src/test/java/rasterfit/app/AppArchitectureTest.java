package rasterfit.app;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;

/** Keeps the application's packages, one per capability, apart from each other where they can be. */
class AppArchitectureTest {

    private static final JavaClasses APP = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("rasterfit.app");

    @Test
    void capabilitiesDoNotDependOnEachOtherInCircles() {
        slices().matching("rasterfit.app.(*)..").should().beFreeOfCycles().check(APP);
    }

    @Test
    void problemsKnowNoCapabilityAndNoEngine() {
        noClasses()
                .that()
                .resideInAPackage("rasterfit.app.problem..")
                .should()
                .dependOnClassesThat(resideInAPackage("rasterfit..")
                        .and(com.tngtech.archunit.base.DescribedPredicate.not(
                                resideInAPackage("rasterfit.app.problem.."))))
                .check(APP);
    }

    @Test
    void everyPackageIsNullMarked() {
        assertThat(APP.stream().map(JavaClass::getPackage).distinct())
                .isNotEmpty()
                .allSatisfy(found -> assertThat(found.isAnnotatedWith(NullMarked.class))
                        .as(found.getName())
                        .isTrue());
    }
}
