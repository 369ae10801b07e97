package rasterfit.match.rank;

import java.util.ArrayList;
import java.util.List;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Criterion;
import rasterfit.match.tune.Candidate;
import rasterfit.match.tune.Curves;
import rasterfit.match.tune.Scoring;
import rasterfit.match.tune.TunedRoute;

/**
 * A route with one setting for each of its groups of modes.
 *
 * @param sameRaster whether the display sees the same raster in all modes
 */
record Setup(
        TunedRoute tuned,
        List<Candidate> settings,
        double partial,
        double picture,
        double latency,
        AcceptanceGrade grade,
        boolean sameRaster,
        double score,
        Axes axes) {

    private static final double SAME_CLOCK = 0.005;

    static Setup start(TunedRoute tuned) {
        return new Setup(tuned, List.of(), 0, 0, 0, AcceptanceGrade.TESTED, true, 0, Axes.NONE);
    }

    /** With the setting of one more group; acceptance counts at its worst. */
    Setup with(Candidate next) {
        List<Candidate> all = new ArrayList<>(settings);
        all.add(next);
        boolean same = sameRaster && (settings.isEmpty() || isSameRaster(settings.get(0), next));
        return new Setup(
                tuned,
                List.copyOf(all),
                partial + next.partial(),
                picture + next.picture(),
                latency + next.latency(),
                grade.worse(next.grade()),
                same,
                0,
                Axes.NONE);
    }

    /** The display keeps its lock when the counts are equal and the clock moves by no more than 0.5 %. */
    private static boolean isSameRaster(Candidate a, Candidate b) {
        double clocks = a.raster().pixelClock().ratioTo(b.raster().pixelClock()).toDouble();
        return a.raster().hasSameCountsAs(b.raster()) && Math.abs(clocks - 1) <= SAME_CLOCK;
    }

    /** The same with another setting for one of its groups. */
    Setup instead(int group, Candidate other) {
        Setup changed = start(tuned);
        for (int each = 0; each < settings.size(); each++) {
            changed = changed.with(each == group ? other : settings.get(each));
        }
        return changed.finished();
    }

    /** With what belongs to the whole: acceptance, gap, effort and cost, and the four axes of dominance. */
    Setup finished() {
        Scoring scoring = tuned.scoring();
        double gap = tuned.switchesDuringPlay() ? Curves.gap(SwitchGap.seconds(this)) : 1;
        double acceptance = Curves.acceptance(grade);
        double cost = tuned.price().amount() == null
                ? 0
                : Curves.cost(tuned.price().amount().doubleValue());
        double total = partial
                + scoring.weight(Criterion.ACCEPTANCE) * acceptance
                + scoring.weight(Criterion.MODE_SWITCH_GAP) * gap
                + scoring.weight(Criterion.EFFORT) * Curves.effort(Effort.changes(tuned.route()))
                + scoring.weight(Criterion.COST) * cost;
        return new Setup(
                tuned,
                settings,
                partial,
                picture,
                latency,
                grade,
                sameRaster,
                total,
                new Axes(picture, latency, acceptance * gap, cost));
    }

    boolean dominates(Setup other) {
        return axes.dominates(other.axes);
    }

    /** The four axes on which setups dominate one another, each between 0 and 1, more being better. */
    record Axes(double picture, double latency, double risk, double cost) {
        static final Axes NONE = new Axes(0, 0, 0, 0);

        /** Sums of the same products in another order differ by less; what is equal must not dominate by rounding. */
        private static final double ROUNDING = 1e-12;

        /** At least as good on every axis and better on one. */
        boolean dominates(Axes other) {
            double least = Math.min(
                    Math.min(picture - other.picture, latency - other.latency),
                    Math.min(risk - other.risk, cost - other.cost));
            double greatest = Math.max(
                    Math.max(picture - other.picture, latency - other.latency),
                    Math.max(risk - other.risk, cost - other.cost));
            return least >= -ROUNDING && greatest > ROUNDING;
        }
    }
}
