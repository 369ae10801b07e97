package rasterfit.sensitivity;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.match.Criterion;
import rasterfit.match.MatchResult.RouteStep;

/**
 * How far one weight can move, all others staying as they are before normalisation, while the first place stays.
 *
 * @param weight as asked, before normalisation
 * @param share after normalisation among the criteria that apply to the first place; absent if it is none of them
 * @param lower the change of first place nearest below; absent if there is none down to 0
 * @param lowerRoute where another route is first, with whatever settings the first route has by then; absent as above, and
 *     where the bound on runs ended the way there
 * @param upper the change of first place nearest above; absent if there is none up to {@link Sensitivity#MOST_WEIGHT}
 * @param upperRoute as for the lower one
 */
public record WeightRoom(
        Criterion criterion,
        double weight,
        @Nullable Double share,
        @Nullable Bound lower,
        @Nullable Bound lowerRoute,
        @Nullable Bound upper,
        @Nullable Bound upperRoute) {

    /**
     * Where another setup is as good as the first.
     *
     * @param factor of the weight as asked; absent where that is 0
     * @param newFirst the route that takes first place beyond
     * @param sameRoute whether it is the first place's own, with other settings
     * @param verified whether a run at this weight found nothing better than the first place. The bound is then exact if
     *     the same criteria apply to all setups; otherwise, and without such a run, it holds for the setups that were seen
     * @param exact whether it is
     */
    public record Bound(
            double weight,
            @Nullable Double factor,
            double score,
            List<RouteStep> newFirst,
            boolean sameRoute,
            boolean verified,
            boolean exact) {}
}
