package rasterfit.app.match;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.remedy.Remedy;
import rasterfit.rule.Stage;

/**
 * All that one rule refused.
 *
 * @param of whether whole routes or single settings
 * @param nearest the one that misses the least; absent where the rule compares no numbers
 * @param remedies single changes that would help, best first; absent where they were not asked for
 */
record RefusalAnswer(
        String rule,
        Stage stage,
        RefusalGroup.Of of,
        long count,
        @Nullable NearestAnswer nearest,
        String message,
        @Nullable List<RemedyAnswer> remedies) {

    /**
     * The nearest miss.
     *
     * @param route ids along the chain; {@code owned:} stands before those of a collection's items
     * @param value exact, in {@code unit}
     * @param limit exact, in {@code unit}
     */
    record NearestAnswer(
            List<String> route,
            String value,
            String limit,
            @Nullable String unit) {
        static NearestAnswer of(MatchResult.Nearest nearest) {
            return new NearestAnswer(
                    nearest.route(), nearest.value().toString(), nearest.limit().toString(), nearest.unit());
        }
    }

    static RefusalAnswer of(RefusalGroup group, @Nullable List<Remedy> remedies) {
        return new RefusalAnswer(
                group.rule().id(),
                group.rule().stage(),
                group.of(),
                group.count(),
                group.nearest() == null ? null : NearestAnswer.of(group.nearest()),
                group.message(),
                RemedyAnswer.list(remedies));
    }
}
