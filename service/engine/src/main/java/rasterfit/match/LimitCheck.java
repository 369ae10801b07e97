package rasterfit.match;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.rule.LimitRules;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;

/** Asks the limits of a request about measures; of several that fail, the first in the order of the rules counts. */
public final class LimitCheck {
    private final List<Limit> limits;

    public LimitCheck(List<Limit> limits) {
        this.limits = List.copyOf(limits);
    }

    /** Only the limits on one measure. */
    public List<Limit> on(LimitedMeasure measure) {
        List<Limit> found = new ArrayList<>();
        for (Limit limit : limits) {
            if (limit.measure() == measure) {
                found.add(limit);
            }
        }
        return found;
    }

    public @Nullable Refusal check(LimitedMeasure measure, @Nullable Rational value) {
        if (value == null) {
            return null;
        }
        for (Limit limit : limits) {
            if (limit.measure() == measure && !limit.isKeptBy(value)) {
                return refusal(limit, value);
            }
        }
        return null;
    }

    public @Nullable Refusal check(LimitedMeasure measure, Latency latency) {
        for (Limit limit : limits) {
            if (limit.measure() == measure && limit.figure() != null) {
                Rational value = latency.figure(limit.figure());
                if (!limit.isKeptBy(value)) {
                    return refusal(limit, value);
                }
            }
        }
        return null;
    }

    public static Refusal refusal(Limit limit, @Nullable Rational value) {
        if (limit.measure() == LimitedMeasure.ACCEPTANCE && value != null) {
            boolean atMost = limit.bound() == Limit.Bound.AT_MOST;
            Refusal words = LimitRules.inWords(
                    limit.measure().id(),
                    AcceptanceGrade.ofRankFromWorst(value).name(),
                    atMost,
                    AcceptanceGrade.ofRankFromWorst(limit.value()).name());
            return new Refusal(
                    words.rule(),
                    value,
                    limit.value(),
                    "grades above " + AcceptanceGrade.OUTSIDE_LIMITS,
                    words.message());
        }
        return LimitRules.refusal(
                limit.measure().id(),
                value,
                limit.value(),
                limit.bound() == Limit.Bound.AT_MOST,
                limit.measure().unit());
    }

    /** The one of two refusals whose rule comes first. */
    public static @Nullable Refusal first(@Nullable Refusal a, @Nullable Refusal b) {
        return Rules.first(a, b);
    }
}
