package rasterfit.app.match;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.stereotype.Service;
import rasterfit.app.access.Callers;
import rasterfit.app.answer.EngineVersion;
import rasterfit.app.belongings.Belongings;
import rasterfit.app.belongings.Owned;
import rasterfit.app.catalogue.Catalogues;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.Problems;
import rasterfit.gear.Catalogue;
import rasterfit.match.MatchRequest;
import rasterfit.match.Matcher;
import rasterfit.match.OutOfTime;
import rasterfit.match.TooMuchWork;
import rasterfit.match.WorkLimit;

/** Computes matches within stated limits of work and time. */
@Service
@EnableConfigurationProperties(MatchProperties.class)
class MatchService {
    private final Catalogues catalogues;
    private final ObjectProvider<Belongings> belongings;
    private final Callers callers;
    private final MatchProperties limits;
    private final String engineVersion;

    /** @param belongings at most one; without, there are no collections */
    MatchService(
            Catalogues catalogues,
            ObjectProvider<Belongings> belongings,
            Callers callers,
            MatchProperties limits,
            EngineVersion engineVersion) {
        this.catalogues = catalogues;
        this.belongings = belongings;
        this.callers = callers;
        this.limits = limits;
        this.engineVersion = engineVersion.value();
    }

    /**
     * @param minCatalogueRevision a change that the catalogue has to hold
     * @throws rasterfit.app.problem.ProblemException if the request is faulty or costs too much
     */
    MatchAnswer match(MatchRequestBody body, long minCatalogueRevision) {
        Catalogue catalogue = catalogues.atLeast(minCatalogueRevision);
        ReadRequest read = new RequestReader(catalogue, id -> collection(id, catalogue)).read(body);
        MatchRequest request = read.request();
        Catalogue rest = RequestReader.without(catalogue, request.equipment());
        try {
            Matcher matcher = new Matcher(new WorkLimit(limits.maxSettings(), deadline()));
            return MatchAnswer.of(engineVersion, read.collectionRevision(), WholeResult.of(matcher, read, rest));
        } catch (TooMuchWork tooMuch) {
            String detail = "The request needs " + tooMuch.settings() + " settings to be computed; at most "
                    + tooMuch.maximum() + " are allowed. Name an input or a variant, or leave equipment out.";
            throw Problems.workLimitExceeded(
                    detail, List.of(ProblemError.at("", detail, Long.toString(tooMuch.maximum()))));
        } catch (OutOfTime late) {
            throw Problems.unavailable(
                    "The match did not end within " + limits.maxTime().toMillis() + " ms.", limits.maxTime());
        }
    }

    private Optional<Owned> collection(String id, Catalogue catalogue) {
        return Optional.ofNullable(belongings.getIfAvailable())
                .flatMap(all -> all.find(callers.current().owner(), id, catalogue));
    }

    private BooleanSupplier deadline() {
        long end = System.nanoTime() + limits.maxTime().toNanos();
        return () -> System.nanoTime() - end > 0;
    }
}
