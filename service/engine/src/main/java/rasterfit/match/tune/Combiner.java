package rasterfit.match.tune;

import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Mode;
import rasterfit.match.Criterion;
import rasterfit.match.Limit;
import rasterfit.match.LimitCheck;
import rasterfit.match.LimitedMeasure;
import rasterfit.match.WorkLimit;
import rasterfit.quantity.Rational;
import rasterfit.rule.LimitRules;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;
import rasterfit.timing.Raster;

/**
 * The hot loop: walks through every setting of a layout, joins the utilities and refusal codes of its tables, counts the
 * refused ones by rule and hands the others to the outcome. It computes no measure but those that join two tables: the
 * aspect (columns by rows), the coverage (columns times rows) and the total latency (converter plus display).
 */
final class Combiner {
    private static final int TOTAL_LATENCY = Rules.position(LimitRules.of(LimitedMeasure.TOTAL_LATENCY_MS.id()));

    private final Tables tables;
    private final Layout layout;
    private final Scoring scoring;
    private final RefusalTally tally;
    private final GroupOutcome outcome;
    private final JointLimits joint;
    private final ModeFigures[] figures;
    private final @Nullable Cell always;
    private final long[] refused = new long[Rules.all().size()];
    /** Of the refusal in {@code nearest} at the same place; without one, nothing. */
    private final double[] leastMiss = new double[Rules.all().size()];

    private final @Nullable Refusal[] nearest =
            new @Nullable Refusal[Rules.all().size()];

    /**
     * Prepares one walk.
     *
     * @param always what refuses every setting; absent if nothing does
     * @param shares of the modes in the order of the layout, as parts of the whole library
     */
    Combiner(
            Tables tables,
            @Nullable Refusal always,
            Scoring scoring,
            LimitCheck limits,
            double[] shares,
            RefusalTally tally,
            GroupOutcome outcome) {
        this.tables = tables;
        this.layout = tables.layout;
        this.always = always == null ? null : new JointCell(always);
        this.scoring = scoring;
        this.tally = tally;
        this.outcome = outcome;
        this.joint = new JointLimits(limits);
        this.figures = new ModeFigures[shares.length];
        for (int m = 0; m < shares.length; m++) {
            figures[m] = new ModeFigures(layout, tables.modes.get(m), shares[m], scoring);
        }
    }

    /** What stays the same for a mode over all settings. */
    private static final class ModeFigures {
        final double share;
        final double pixelAspect;
        final Rational exactAspect;
        final PictureArea area;
        final double greatestArea;
        final double panelArea;
        final double panelRows;
        final double detail;
        final double softness;
        final Rational perDotBase;

        ModeFigures(Layout layout, Mode mode, double share, Scoring scoring) {
            this.share = share;
            Rational aspect = layout.intendedAspect(mode);
            this.pixelAspect = aspect.toDouble();
            this.exactAspect = aspect;
            this.area = PictureArea.of(layout.route.display().panel(), mode, aspect);
            this.greatestArea = area.greatest().toDouble();
            this.panelArea = area.panel().toDouble();
            this.panelRows = area.panelRows().toDouble();
            boolean analog = scoring.applies(Criterion.LINK_DETAIL);
            SignalChain chain = layout.chain();
            this.detail = analog ? chain.detail(mode, Steps.SILENT).combined().toDouble() : 1;
            this.softness = layout.samples()[0] > 0 ? Sampling.edgeSoftness(mode, chain) : 0;
            this.perDotBase = mode.dotsPerLine();
        }
    }

    /** Limits on measures that join two tables, as plain numbers. */
    private static final class JointLimits {
        private final List<Limit> aspect;
        private final List<Limit> coverage;
        private final List<Limit> height;
        private final List<Limit> total;

        JointLimits(LimitCheck limits) {
            this.aspect = limits.on(LimitedMeasure.ASPECT_ERROR_PERCENT);
            this.coverage = limits.on(LimitedMeasure.COVERAGE_PERCENT);
            this.height = limits.on(LimitedMeasure.COVERAGE_HEIGHT_PERCENT);
            this.total = limits.on(LimitedMeasure.TOTAL_LATENCY_MS);
        }

        boolean onShape() {
            return !aspect.isEmpty() || !coverage.isEmpty() || !height.isEmpty();
        }
    }

    void walk(WorkLimit workLimit) {
        int modes = figures.length;
        for (int n = 0; n < tables.samples.length; n++) {
            workLimit.check();
            Cell sample = always == null ? tables.sample(n) : earlier(tables.sample(n), always);
            for (int p = 0; p < tables.placements; p++) {
                for (int c = 0; c < tables.controls; c++) {
                    Cell blocking = sample;
                    double shape = 0;
                    double picture = 0;
                    Cell jointCell = null;
                    for (int m = 0; m < modes; m++) {
                        Tables.AxisCell columns = tables.columns(m, n, p, c);
                        Tables.AxisCell rows = tables.rows(m, n, p, c);
                        blocking = earlier(earlier(blocking, columns), rows);
                        ModeFigures figure = figures[m];
                        double aspectError = columns.scale / rows.scale / figure.pixelAspect - 1;
                        double uniformity = uniformity(figure, columns, rows, n);
                        double aspect = Curves.aspect(aspectError * 100);
                        double coverage = Curves.coverage(
                                columns.drawn * rows.drawn, figure.greatestArea, rows.kept, columns.kept);
                        shape += figure.share
                                * (scoring.weight(Criterion.DOT_UNIFORMITY) * uniformity
                                        + scoring.weight(Criterion.ASPECT) * aspect
                                        + scoring.weight(Criterion.COVERAGE) * coverage
                                        + scoring.weight(Criterion.LINK_DETAIL) * figure.detail);
                        picture += figure.share
                                * (scoring.picture(Criterion.DOT_UNIFORMITY) * uniformity
                                        + scoring.picture(Criterion.ASPECT) * aspect
                                        + scoring.picture(Criterion.COVERAGE) * coverage
                                        + scoring.picture(Criterion.LINK_DETAIL) * figure.detail);
                        if (joint.onShape()) {
                            jointCell = earlier(jointCell, shapeRefusal(figure, columns, rows, aspectError));
                        }
                    }
                    walkRates(n, p, c, jointCell == null ? blocking : earlier(blocking, jointCell), shape, picture);
                }
            }
        }
        flush();
    }

    private static final class JointCell extends Cell {
        JointCell(Refusal refusal) {
            super(refusal);
        }
    }

    private void walkRates(int n, int p, int c, Cell geometry, double shape, double picture) {
        for (int l = 0; l < tables.locks; l++) {
            Tables.OutputCell output = tables.output(n, p, l);
            Cell upToOutput = earlier(geometry, output);
            for (int d = 0; d < tables.deinterlacers; d++) {
                Cell blocking = upToOutput;
                double score = shape;
                double pictureAxis = picture;
                double latencyAxis = 0;
                for (int m = 0; m < figures.length; m++) {
                    Tables.DelayCell delay = tables.delay(m, p, l, d);
                    blocking = earlier(blocking, delay);
                    if (!joint.total.isEmpty() && blocking.code >= TOTAL_LATENCY) {
                        Refusal total = totalRefusal(delay, output);
                        blocking = total == null ? blocking : earlier(blocking, new JointCell(total));
                    }
                    double share = figures[m].share;
                    double latency = delay.utility * output.lagUtility;
                    score += share
                            * (scoring.weight(Criterion.LATENCY) * latency
                                    + scoring.weight(Criterion.MOTION) * delay.motion);
                    pictureAxis += share * scoring.picture(Criterion.MOTION) * delay.motion;
                    latencyAxis += share * latency;
                }
                if (blocking.code != Cell.OPEN) {
                    refuse(blocking);
                } else {
                    String key = output.rasterKey;
                    if (outcome.matters(output.grade, key, score, pictureAxis, latencyAxis)) {
                        outcome.add(new Candidate(
                                tables, n, p, l, d, c, score, pictureAxis, latencyAxis, output.grade, key));
                    }
                }
            }
        }
    }

    private double uniformity(ModeFigures figure, Tables.AxisCell columns, Tables.AxisCell rows, int n) {
        int samples = tables.samples[n];
        if (samples > 0 && Rational.of(samples).isLessThan(figure.perDotBase)) {
            return 0;
        }
        return Curves.uniformity(columns.evenness, figure.softness, rows.evenness);
    }

    /** The rule that comes first counts; of one rule, the mode that misses it by more, since all modes must keep it. */
    private static Cell earlier(Cell a, Cell b) {
        return b.code < a.code || (b.code == a.code && b.miss > a.miss) ? b : a;
    }

    private static @Nullable Cell earlier(@Nullable Cell a, @Nullable Refusal b) {
        if (b == null) {
            return a;
        }
        Cell cell = new JointCell(b);
        return a == null ? cell : earlier(a, cell);
    }

    private @Nullable Refusal shapeRefusal(
            ModeFigures figure, Tables.AxisCell columns, Tables.AxisCell rows, double aspectError) {
        Refusal refusal = check(
                joint.aspect,
                Math.abs(aspectError) * 100,
                () -> columns.shape
                        .scale()
                        .dividedBy(rows.shape.scale())
                        .dividedBy(figure.exactAspect)
                        .minus(Rational.ONE)
                        .abs()
                        .times(100));
        refusal = LimitCheck.first(
                refusal,
                check(
                        joint.coverage,
                        columns.drawn * rows.drawn / figure.panelArea * 100,
                        () -> columns.shape
                                .drawn()
                                .times(rows.shape.drawn())
                                .times(100)
                                .dividedBy(figure.area.panel())));
        return LimitCheck.first(
                refusal,
                check(
                        joint.height,
                        rows.drawn / figure.panelRows * 100,
                        () -> rows.shape.drawn().times(100).dividedBy(figure.area.panelRows())));
    }

    /** A thousandth of a millionth of room, so that rounding never refuses what is exactly at its limit. */
    private @Nullable Refusal check(List<Limit> limits, double value, Supplier<Rational> exact) {
        for (Limit limit : limits) {
            double bound = limit.value().toDouble();
            double room = 1e-9 * Math.max(1, Math.abs(bound));
            boolean kept = limit.bound() == Limit.Bound.AT_MOST ? value <= bound + room : value >= bound - room;
            if (!kept) {
                int code = Rules.position(LimitRules.of(limit.measure().id()));
                Refusal known = nearest[code];
                double miss = Math.abs(value - bound) / (bound == 0 ? 1 : Math.abs(bound));
                // Only a nearer miss is worth its exact value; of several modes the worst counts, so each needs its
                // own.
                boolean knowsNearer = figures.length == 1 && known != null && miss >= leastMiss[code];
                return knowsNearer ? known : LimitCheck.refusal(limit, exact.get());
            }
        }
        return null;
    }

    private @Nullable Refusal totalRefusal(Tables.DelayCell delay, Tables.OutputCell output) {
        for (Limit limit : joint.total) {
            if (limit.figure() != null) {
                Rational value = delay.added.ms().figure(limit.figure()).plus(output.lag.figure(limit.figure()));
                if (!limit.isKeptBy(value)) {
                    return LimitCheck.refusal(limit, value);
                }
            }
        }
        return null;
    }

    private void refuse(Cell blocking) {
        refused[blocking.code]++;
        if (nearest[blocking.code] == null || blocking.miss < leastMiss[blocking.code]) {
            leastMiss[blocking.code] = blocking.miss;
            nearest[blocking.code] = blocking.refusal;
        }
    }

    private void flush() {
        for (int code = 0; code < refused.length; code++) {
            Refusal refusal = nearest[code];
            if (refused[code] > 0 && refusal != null) {
                tally.addSettings(layout.route, refusal, refused[code]);
            }
        }
    }

    /** Equal for equal rasters; with the clock, since a display follows a change of it beyond 0.5 % anew. */
    static String rasterKey(Raster raster) {
        return raster.horizontalActive() + "/" + raster.horizontalTotal() + " " + raster.verticalActive() + "/"
                + raster.verticalTotal() + " " + raster.scan() + " " + raster.pixelClock();
    }
}
