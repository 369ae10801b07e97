package rasterfit.app.match;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.app.match.MatchAnswer.FindingAnswer;
import rasterfit.app.match.MatchAnswer.PriceAnswer;
import rasterfit.app.match.MatchAnswer.RouteStepAnswer;
import rasterfit.remedy.Change;
import rasterfit.remedy.Remedy;

/**
 * A single change that would help, and what it leads to. A run of the match with this change ranks that setup.
 *
 * @param change in words
 * @param id of what is used then: a link (several joined by {@code >}), converter, output, variant, input with its menu
 *     state, or the measure of a limit; absent for other settings of the same parts
 * @param instead what it takes the place of; absent where it comes in addition
 * @param value the new bound of a limit; absent for other changes and where the limit is dropped
 * @param added true where the request has to name or gain it; absent where it has it
 * @param resultingScore of the setup to which it leads
 * @param addedLatencyMs the greatest of all modes
 * @param cautions dangers to people or gear that come with that setup
 */
record RemedyAnswer(
        String change,
        Change.Kind kind,
        @Nullable String id,
        @Nullable String instead,
        @Nullable String value,
        @Nullable Boolean added,
        BigDecimal resultingScore,
        PriceAnswer price,
        BigDecimal addedLatencyMs,
        List<RouteStepAnswer> route,
        List<FindingAnswer> cautions) {

    static @Nullable List<RemedyAnswer> list(@Nullable List<Remedy> remedies) {
        return remedies == null ? null : remedies.stream().map(RemedyAnswer::of).toList();
    }

    private static RemedyAnswer of(Remedy remedy) {
        Change change = remedy.change();
        return new RemedyAnswer(
                change.told(),
                change.kind(),
                written(change.id()),
                written(change.instead()),
                change.value(),
                change.added() ? true : null,
                Plain.of(remedy.resultingScore()),
                PriceAnswer.of(remedy.price()),
                Plain.of(remedy.addedLatencyMs()),
                remedy.route().stream().map(RouteStepAnswer::of).toList(),
                remedy.cautions().stream().map(FindingAnswer::of).toList());
    }

    private static @Nullable String written(@Nullable String id) {
        return id == null ? null : OwnedGear.written(id);
    }
}
