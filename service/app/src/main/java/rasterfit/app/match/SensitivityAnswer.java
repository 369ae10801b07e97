package rasterfit.app.match;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.gear.Estimate;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.match.Reruns;
import rasterfit.rule.Stage;
import rasterfit.sensitivity.FactEffect;
import rasterfit.sensitivity.FactPath;
import rasterfit.sensitivity.Sensitivity;
import rasterfit.sensitivity.WeightRoom;

/**
 * How sure the first place is.
 *
 * @param weights how far each can move by itself; empty where nothing is ranked
 * @param facts what each uncertain fact of the first three setups does, the weightiest first
 * @param measureNext the fact whose knowledge would settle most; absent where none matters
 */
record SensitivityAnswer(
        List<WeightRoomAnswer> weights,
        List<FactEffectAnswer> facts,
        @Nullable MeasureNextAnswer measureNext,
        RunsAnswer runs) {

    /**
     * How often the match was run on changed requests.
     *
     * @param made runs
     * @param leftOut runs that were wanted and not made, since the bound on this work was reached
     */
    record RunsAnswer(int made, int leftOut) {
        static RunsAnswer of(Reruns.Spent spent) {
            return new RunsAnswer(spent.runs(), spent.leftOut());
        }
    }

    /**
     * How far a weight can move, the others staying as asked.
     *
     * @param weight as asked, before normalisation
     * @param share after normalisation; absent where the criterion does not apply to the first place
     * @param lower the first change of the best setup on the way down to 0; absent if there is none
     * @param lowerRoute the change on that way that brings another route; absent if there is none
     * @param upper as lower, on the way up to 1,000,000
     * @param upperRoute as lowerRoute, on the way up
     */
    record WeightRoomAnswer(
            String criterion,
            BigDecimal weight,
            @Nullable BigDecimal share,
            @Nullable WeightBoundAnswer lower,
            @Nullable WeightBoundAnswer lowerRoute,
            @Nullable WeightBoundAnswer upper,
            @Nullable WeightBoundAnswer upperRoute) {
        static WeightRoomAnswer of(WeightRoom room) {
            return new WeightRoomAnswer(
                    room.criterion().id(),
                    Plain.of(room.weight()),
                    Plain.orAbsent(room.share()),
                    WeightBoundAnswer.of(room.lower()),
                    WeightBoundAnswer.of(room.lowerRoute()),
                    WeightBoundAnswer.of(room.upper()),
                    WeightBoundAnswer.of(room.upperRoute()));
        }
    }

    /**
     * Where another setup is as good as the one that is best up to there.
     *
     * @param factor of the weight as asked; absent where that is 0
     * @param score of both
     * @param newFirst ids along the route that is first beyond
     * @param sameRoute whether that is the first place's own route, with other settings
     * @param verified whether a run at this weight found nothing better
     * @param exact whether nothing can be better on the way there either; otherwise it holds for what was seen
     */
    record WeightBoundAnswer(
            BigDecimal weight,
            @Nullable BigDecimal factor,
            BigDecimal score,
            List<String> newFirst,
            boolean sameRoute,
            boolean verified,
            boolean exact) {
        static @Nullable WeightBoundAnswer of(WeightRoom.@Nullable Bound bound) {
            return bound == null
                    ? null
                    : new WeightBoundAnswer(
                            Plain.of(bound.weight()),
                            Plain.orAbsent(bound.factor()),
                            Plain.of(bound.score()),
                            ids(bound.newFirst()),
                            bound.sameRoute(),
                            bound.verified(),
                            bound.exact());
        }
    }

    /**
     * What a fact does that is known only within a range, or not at all.
     *
     * @param item id of the variant, link, converter or display
     * @param of path of the fact in that item's document, as in its provenance
     * @param assumed whether nobody stated it; the range is then our assumption
     * @param least in the unit that the fact's name tells
     * @param typical with which the match was computed
     * @param scoreSwing the most by which the score of any of the first three setups differs over the range
     * @param changesNear the value at which another route is first, interpolated; absent if none is
     */
    record FactEffectAnswer(
            FactPath.Kind kind,
            String item,
            String name,
            String of,
            boolean assumed,
            BigDecimal least,
            BigDecimal typical,
            BigDecimal greatest,
            @Nullable AtEndAnswer atLeast,
            @Nullable AtEndAnswer atGreatest,
            boolean changesFirst,
            BigDecimal scoreSwing,
            @Nullable BigDecimal changesNear) {
        static FactEffectAnswer of(FactEffect effect) {
            FactPath fact = effect.fact();
            Estimate range = effect.estimate();
            return new FactEffectAnswer(
                    fact.kind(),
                    OwnedGear.written(fact.item()),
                    fact.name(),
                    fact.of(),
                    range.assumed(),
                    Plain.of(range.least()),
                    Plain.of(range.typical()),
                    Plain.of(range.greatest()),
                    AtEndAnswer.of(effect.atLeast()),
                    AtEndAnswer.of(effect.atGreatest()),
                    effect.changesFirst(),
                    Plain.of(effect.scoreSwing()),
                    Plain.orAbsent(effect.changesNear()));
        }
    }

    /**
     * With a fact at one end of its range.
     *
     * @param changesOrder whether the first three routes stand in another order
     * @param first ids along the route that is first; empty if nothing is left
     */
    record AtEndAnswer(boolean changesFirst, boolean changesOrder, List<String> first) {
        static @Nullable AtEndAnswer of(FactEffect.@Nullable AtEnd end) {
            return end == null ? null : new AtEndAnswer(end.changesFirst(), end.changesOrder(), ids(end.first()));
        }
    }

    /** The fact to be measured next, and why. */
    record MeasureNextAnswer(
            FactPath.Kind kind,
            String item,
            String of,
            String why,
            BigDecimal least,
            BigDecimal greatest,
            boolean changesFirst,
            BigDecimal scoreSwing) {
        static MeasureNextAnswer of(FactEffect effect) {
            BigDecimal least = Plain.of(effect.estimate().least());
            BigDecimal greatest = Plain.of(effect.estimate().greatest());
            return new MeasureNextAnswer(
                    effect.fact().kind(),
                    OwnedGear.written(effect.fact().item()),
                    effect.fact().of(),
                    why(effect, least, greatest),
                    least,
                    greatest,
                    effect.changesFirst(),
                    Plain.of(effect.scoreSwing()));
        }

        private static String why(FactEffect effect, BigDecimal least, BigDecimal greatest) {
            String known = (effect.estimate().assumed() ? "It is not stated and was taken to lie" : "It is stated only")
                    + " between " + least.toPlainString() + " and " + greatest.toPlainString();
            return effect.changesFirst()
                    ? known + "; within that, another route is first."
                    : known + "; nothing else that is uncertain moves the leading scores more, though no value in it"
                            + " brings another route to the first place.";
        }
    }

    static @Nullable SensitivityAnswer of(@Nullable Sensitivity sensitivity) {
        if (sensitivity == null) {
            return null;
        }
        FactEffect next = sensitivity.measureNext();
        return new SensitivityAnswer(
                sensitivity.weights().stream().map(WeightRoomAnswer::of).toList(),
                sensitivity.facts().stream().map(FactEffectAnswer::of).toList(),
                next == null ? null : MeasureNextAnswer.of(next),
                RunsAnswer.of(sensitivity.spent()));
    }

    /** One for each part, ports and menu states included. */
    private static List<String> ids(List<RouteStep> route) {
        return route.stream()
                .map(step -> OwnedGear.written(step.id())
                        + (step.port() == null || step.stage() == Stage.SOURCE_OUTPUT ? "" : ":" + step.port())
                        + (step.state() == null ? "" : "/" + step.state()))
                .toList();
    }
}
