package rasterfit.replay;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import org.junit.jupiter.api.Test;

class ReplayIndependenceTest {
    @Test
    void theReplayAndItsSimulationsKnowNothingOfHowTheEngineComputes() {
        JavaClasses judges = new ClassFileImporter().importPackages("rasterfit.replay", "rasterfit.sim");

        assertThat(judges.contain(Replay.class)).isTrue();
        noClasses()
                .that()
                .resideInAnyPackage("rasterfit.replay", "rasterfit.sim")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("rasterfit.match.tune..", "rasterfit.match.rank..", "rasterfit.match.route..")
                .check(judges);
    }
}
