package rasterfit.app.match;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.springframework.beans.factory.support.StaticListableBeanFactory;
import org.springframework.boot.info.BuildProperties;
import rasterfit.app.access.Caller;
import rasterfit.app.answer.EngineVersion;
import rasterfit.app.belongings.Belongings;
import rasterfit.app.fuzz.Memory;
import rasterfit.app.fuzz.RequestSeeds;
import rasterfit.app.gear.CatalogueBody;
import rasterfit.app.gear.GearReader;
import rasterfit.app.problem.FuzzJson;
import rasterfit.app.problem.ProblemException;
import rasterfit.gear.Catalogue;

/** A match from the bytes of its body to those of its answer, without HTTP, and what holds of every one. */
final class MatchTarget {
    /** Few enough that thousands of requests are tried in a minute; those that need more are refused. */
    private static final long MOST_SETTINGS = 5_000;

    /** Far more than so few settings take, on a loaded machine too: to reach it is a defect. */
    private static final Duration MOST_TIME = Duration.ofSeconds(20);

    /** What answering one request may allocate (measured, with room). */
    private static final long MOST_BYTES = 256L << 20;

    private final MatchService service;

    MatchTarget() {
        CatalogueBody demo = FuzzJson.read(RequestSeeds.demo().toString().getBytes(UTF_8), CatalogueBody.class);
        Catalogue catalogue = GearReader.catalogue(demo, 1);
        StaticListableBeanFactory none = new StaticListableBeanFactory();
        EngineVersion version = new EngineVersion(none.getBeanProvider(BuildProperties.class));
        this.service = new MatchService(
                revision -> catalogue,
                none.getBeanProvider(Belongings.class),
                () -> Caller.LOCAL,
                new MatchProperties(MOST_SETTINGS, MOST_TIME),
                version);
    }

    /** Fails unless the body is answered or refused, within bounds and the same way twice. */
    void check(byte[] body) {
        String first = told(body);
        assertThat(Memory.within(MOST_BYTES, () -> told(body))).isEqualTo(first);
    }

    private String told(byte[] body) {
        try {
            MatchAnswer answer = service.match(FuzzJson.read(body, MatchRequestBody.class), 0);
            checkOrder(answer);
            return FuzzJson.written(answer);
        } catch (ProblemException refused) {
            return FuzzJson.told(refused);
        }
    }

    private static void checkOrder(MatchAnswer answer) {
        assertThat(answer.counts().settings()).isLessThanOrEqualTo(MOST_SETTINGS);
        double least = 1;
        for (MatchAnswer.SetupAnswer setup : answer.ranked()) {
            assertThat(setup.score().doubleValue()).isBetween(0.0, least);
            least = setup.score().doubleValue();
        }
    }
}
