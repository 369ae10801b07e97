package rasterfit.app.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.type;

import java.time.Duration;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.support.StaticListableBeanFactory;
import org.springframework.boot.info.BuildProperties;
import rasterfit.app.access.Caller;
import rasterfit.app.answer.EngineVersion;
import rasterfit.app.belongings.Belongings;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.gear.Catalogue;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What a match may cost. */
class MatchServiceTest {
    private static MatchService service(long maxSettings, Duration maxTime) {
        StaticListableBeanFactory beans = new StaticListableBeanFactory();
        Properties build = new Properties();
        build.setProperty("version", "1.2.3");
        beans.addBean("build", new BuildProperties(build));
        return new MatchService(
                revision -> Catalogue.EMPTY,
                beans.getBeanProvider(Belongings.class),
                () -> Caller.LOCAL,
                new MatchProperties(maxSettings, maxTime),
                new EngineVersion(beans.getBeanProvider(BuildProperties.class)));
    }

    private static MatchRequestBody request() {
        ObjectNode request = MatchRequests.changed(
                all -> ((ArrayNode) all.at("/equipment/converters")).add(MatchRequests.converter()));
        return MatchRequests.JSON.treeToValue(request, MatchRequestBody.class);
    }

    @Test
    void withinItsLimitsAMatchIsAnswered() {
        MatchAnswer answer = service(2_000_000, Duration.ofMinutes(1)).match(request(), 0);
        assertThat(answer.engineVersion()).isEqualTo("1.2.3");
        assertThat(answer.ranked()).isNotEmpty();
    }

    @Test
    void tooManySettingsAreRefusedWithTheMaximum() {
        assertThatThrownBy(() -> service(1, Duration.ofMinutes(1)).match(request(), 0))
                .asInstanceOf(type(ProblemException.class))
                .satisfies(problem -> {
                    assertThat(problem.type()).isEqualTo(ProblemType.WORK_LIMIT_EXCEEDED);
                    assertThat(problem.type().status()).isEqualTo(422);
                    assertThat(problem.detail()).contains("at most 1 ");
                    assertThat(problem.errors().get(0).limit()).isEqualTo("1");
                });
    }

    @Test
    void aMatchThatTakesTooLongIsToBeTriedLater() {
        assertThatThrownBy(() -> service(2_000_000, Duration.ZERO).match(request(), 0))
                .asInstanceOf(type(ProblemException.class))
                .satisfies(problem -> {
                    assertThat(problem.type()).isEqualTo(ProblemType.UNAVAILABLE);
                    assertThat(problem.headers()).containsEntry("Retry-After", "1");
                });
    }
}
