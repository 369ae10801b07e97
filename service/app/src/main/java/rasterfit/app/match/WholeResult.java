package rasterfit.app.match;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Catalogue;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchRequest.Explanation;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Matcher;
import rasterfit.remedy.Remedies;
import rasterfit.remedy.Remedy;
import rasterfit.sensitivity.Sensitivity;

/**
 * A match and what was looked into beyond it.
 *
 * @param remedies absent where none were asked for
 * @param sensitivity absent where it was not asked for
 */
record WholeResult(
        MatchResult result,
        ReadRequest.Further further,
        Remedies.@Nullable Found remedies,
        @Nullable Sensitivity sensitivity) {

    /** @param catalogue without what the request describes itself under the same id */
    static WholeResult of(Matcher matcher, ReadRequest read, Catalogue catalogue) {
        MatchRequest request = read.request();
        MatchRequest every = request.ofEveryRoute();
        ReadRequest.Further further = read.further();
        boolean isAnswerOfEvery = request.settingsPerRoute() == 1 && request.explain() == Explanation.SUMMARY;
        MatchResult result = matcher.match(isAnswerOfEvery ? every : request, catalogue);
        if (!further.isAsked(!result.refused().isEmpty())) {
            return new WholeResult(result.head(request.top()), further, null, null);
        }
        MatchResult all = isAnswerOfEvery ? result : matcher.match(every, catalogue);
        Integer rank = further.forRank();
        List<RankedSetup> ranked = result.head(request.top()).ranked();
        RankedSetup lift = rank == null || rank > ranked.size() ? null : ranked.get(rank - 1);
        Remedies.Found remedies = further.refusals() || lift != null
                ? Remedies.of(
                        matcher,
                        Remedies.BOUND,
                        new Remedies.Asked(further.refusals(), lift, read.others()),
                        every,
                        catalogue,
                        all)
                : null;
        Sensitivity sensitivity =
                further.sensitivity() ? Sensitivity.of(matcher, Sensitivity.BOUND, every, catalogue, all) : null;
        return new WholeResult(result.head(request.top()), further, remedies, sensitivity);
    }

    /** Absent for all but the setup that was to be lifted. */
    @Nullable
    List<Remedy> remediesOf(RankedSetup setup) {
        Integer rank = further.forRank();
        return remedies != null && rank != null && rank == setup.rank() ? remedies.lift() : null;
    }

    /** Each with its remedies, where those were asked for. */
    List<RefusalAnswer> refusals() {
        List<RefusalAnswer> refusals = new ArrayList<>();
        for (int i = 0; i < result.refused().size(); i++) {
            List<Remedy> own =
                    remedies != null && further.refusals() ? remedies.refused().get(i) : null;
            refusals.add(RefusalAnswer.of(result.refused().get(i), own));
        }
        return refusals;
    }

    /** Absent where no run was needed. */
    SensitivityAnswer.@Nullable RunsAnswer remedyRuns() {
        Remedies.Found found = remedies;
        if (found == null || (found.spent().runs() == 0 && found.spent().leftOut() == 0)) {
            return null;
        }
        return SensitivityAnswer.RunsAnswer.of(found.spent());
    }
}
