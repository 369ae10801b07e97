package rasterfit.app.match;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.CriterionValue;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.remedy.Remedy;
import rasterfit.rule.Finding;
import rasterfit.rule.Severity;
import rasterfit.rule.Stage;

/**
 * The answer to a match: ranked setups, and what was refused and why.
 *
 * @param collectionRevision of the collection that took part; absent if none did
 * @param ranked best first
 * @param refused by rule, in chain order
 * @param remedyRuns how often the match was run on changed requests to find remedies; absent where that was not needed
 * @param sensitivity how sure the first place is; absent where that was not asked for
 */
record MatchAnswer(
        String engineVersion,
        long catalogueRevision,
        @Nullable Long collectionRevision,
        CountsAnswer counts,
        List<SetupAnswer> ranked,
        List<RefusalAnswer> refused,
        SensitivityAnswer.@Nullable RunsAnswer remedyRuns,
        @Nullable SensitivityAnswer sensitivity) {

    /**
     * How much was looked at.
     *
     * @param routes mating chains, refused ones included
     * @param settings over all routes and groups of modes
     */
    record CountsAnswer(int routes, int refusedRoutes, long settings, long refusedSettings) {}

    /**
     * A route with settings for all modes.
     *
     * @param score from 0 to 1, the weighted mean of the utilities of {@code criteria}
     * @param paretoOptimal whether no other setup is better in picture, latency, risk or cost without being worse in
     *     another of them
     * @param modeSettings one for each group of modes that the equipment cannot tell apart
     * @param remedies single changes that lead to a better setup, best first; only for the rank for which they were asked
     */
    record SetupAnswer(
            int rank,
            BigDecimal score,
            boolean paretoOptimal,
            PriceAnswer price,
            List<RouteStepAnswer> route,
            List<ModeSettingAnswer> modeSettings,
            List<CriterionValueAnswer> criteria,
            List<FindingAnswer> findings,
            @Nullable List<RemedyAnswer> remedies) {
        static SetupAnswer of(RankedSetup setup, @Nullable List<Remedy> remedies) {
            return new SetupAnswer(
                    setup.rank(),
                    Plain.of(setup.score()),
                    setup.paretoOptimal(),
                    PriceAnswer.of(setup.price()),
                    setup.route().stream().map(RouteStepAnswer::of).toList(),
                    setup.modeSettings().stream().map(ModeSettingAnswer::of).toList(),
                    setup.criteria().stream().map(CriterionValueAnswer::of).toList(),
                    setup.findings().stream().map(FindingAnswer::of).toList(),
                    RemedyAnswer.list(remedies));
        }
    }

    /**
     * What is still to be bought.
     *
     * @param amount the middle of least and greatest; all three absent if nothing is priced
     * @param unpriced ids of what has no price
     */
    record PriceAnswer(
            @Nullable String amount,
            @Nullable String least,
            @Nullable String greatest,
            @Nullable String currency,
            List<String> unpriced) {
        static PriceAnswer of(MatchResult.Price price) {
            return new PriceAnswer(
                    written(price.amount()),
                    written(price.least()),
                    written(price.greatest()),
                    price.currency(),
                    price.unpriced());
        }

        private static @Nullable String written(@Nullable BigDecimal amount) {
            return amount == null ? null : amount.toPlainString();
        }
    }

    /**
     * One part of the chain.
     *
     * @param port which of its inputs or outputs is used
     * @param state menu state of a display input
     * @param id of the item where the part is owned
     * @param detail connector, format and sync
     * @param owned true where the part is an item of the collection; absent otherwise
     */
    record RouteStepAnswer(
            Stage stage,
            String id,
            String name,
            @Nullable String port,
            @Nullable String state,
            @Nullable String detail,
            @Nullable Boolean owned) {
        static RouteStepAnswer of(RouteStep step) {
            return new RouteStepAnswer(
                    step.stage(),
                    OwnedGear.written(step.id()),
                    step.name(),
                    step.port(),
                    step.state(),
                    step.detail(),
                    step.owned() ? true : null);
        }
    }

    /**
     * How a setup does by one criterion.
     *
     * @param value in {@code unit}; absent where there is no single number
     * @param curve how the utility follows from the value
     * @param utility from 0 to 1
     * @param weight after normalisation
     */
    record CriterionValueAnswer(
            String id, @Nullable BigDecimal value, String unit, String curve, BigDecimal utility, BigDecimal weight) {
        static CriterionValueAnswer of(CriterionValue value) {
            return new CriterionValueAnswer(
                    value.criterion().id(),
                    Plain.orAbsent(value.value()),
                    value.criterion().unit(),
                    value.criterion().curve(),
                    Plain.of(value.utility()),
                    Plain.of(value.weight()));
        }
    }

    /** Something to know about a setup that works. */
    record FindingAnswer(String rule, Severity severity, Stage stage, String message) {
        static FindingAnswer of(Finding finding) {
            return new FindingAnswer(
                    finding.rule().id(),
                    finding.rule().severity(),
                    finding.rule().stage(),
                    finding.message());
        }
    }

    static MatchAnswer of(String engineVersion, @Nullable Long collectionRevision, WholeResult whole) {
        MatchResult result = whole.result();
        MatchResult.Counts counts = result.counts();
        return new MatchAnswer(
                engineVersion,
                result.catalogueRevision(),
                collectionRevision,
                new CountsAnswer(counts.routes(), counts.refusedRoutes(), counts.settings(), counts.refusedSettings()),
                result.ranked().stream()
                        .map(setup -> SetupAnswer.of(setup, whole.remediesOf(setup)))
                        .toList(),
                whole.refusals(),
                whole.remedyRuns(),
                SensitivityAnswer.of(whole.sensitivity()));
    }
}
