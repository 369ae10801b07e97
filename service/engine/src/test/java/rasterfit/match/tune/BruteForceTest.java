package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Mode;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Criterion;
import rasterfit.match.LimitCheck;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;
import rasterfit.match.Modes;
import rasterfit.match.PixelAspectConvention;
import rasterfit.match.Workbench;
import rasterfit.match.route.Route;
import rasterfit.match.route.RouteFinder;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.rule.LinkClockRules;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;
import rasterfit.timing.Raster;

/**
 * The hot loop and the joining of groups against brute force: every setting of every group in every combination, each
 * with its own measures, no table, no pruning.
 */
class BruteForceTest {
    private static final double EVEN = 1e-9;

    /** One setting that nothing refuses, with its measures by mode. */
    private record Open(Measurer measurer, Candidate candidate, Map<Mode, Measures> measures, AcceptanceGrade grade) {}

    /** A whole setup by brute force. */
    private record Whole(double score, double picture, double latency, double risk, double cost) {
        boolean dominates(Whole other) {
            boolean asGood = picture >= other.picture - 1e-12
                    && latency >= other.latency - 1e-12
                    && risk >= other.risk - 1e-12
                    && cost >= other.cost - 1e-12;
            boolean better = picture > other.picture + 1e-12
                    || latency > other.latency + 1e-12
                    || risk > other.risk + 1e-12
                    || cost > other.cost + 1e-12;
            return asGood && better;
        }
    }

    private final Map<String, Long> refused = new TreeMap<>();
    private long settings;

    @Test
    void oneGroupAgrees() {
        compare(new Workbench()
                .modes(Modes.half525())
                .converters(
                        Workbench.converter(
                                "scaler",
                                Workbench.samples(682, 858, 1364),
                                Workbench.scale(
                                        4,
                                        List.of(
                                                Workbench.locked(3000, 40),
                                                Workbench.free(2, Frequency.ofHz(60)),
                                                Workbench.free(1, Frequency.ofHz(60_000, 1001))),
                                        16,
                                        4,
                                        31)),
                        Workbench.converter(
                                "repeater",
                                "40",
                                Workbench.samples(341, 858, 1364),
                                Workbench.formatOnly(),
                                Workbench.repeat(2, 3, 4, 5))));
    }

    @Test
    void twoGroupsThatSwitchDuringPlayAgree() {
        compare(new Workbench()
                .modes(Modes.as(Modes.half525(), "play", 3, false), Modes.as(Modes.interlaced525(), "menu", 1, true))
                .converters(Workbench.converter(
                        "scaler",
                        Workbench.samples(780, 1364),
                        Workbench.scale(2, List.of(Workbench.locked(3000, null), Workbench.free(2)), 16, 4),
                        Workbench.repeat(2, 3)))
                .weight(Criterion.MODE_SWITCH_GAP, 4));
    }

    @Test
    void modesOfDifferentRatesThatTheConverterCanShowAtOneRateAgree() {
        // Equal counts at 50 and at 60 Hz are different rasters to a display. Sparing it the change wins here, though
        // the
        // seldom mode is better off at its own rate in every other respect.
        compare(new Workbench()
                .modes(
                        Modes.as(Modes.half525(), "sixty", 1, false),
                        Modes.as(
                                Modes.of(
                                        "10640685/2",
                                        "341",
                                        "312",
                                        rasterfit.timing.Scan.PROGRESSIVE,
                                        new rasterfit.gear.Window(256, 240, 65, 40)),
                                "fifty",
                                9,
                                true))
                .converters(Workbench.converter(
                        "scaler",
                        Workbench.samples(682),
                        Workbench.scale(1, List.of(Workbench.free(2, Frequency.ofHz(60), Frequency.ofHz(50))), 16)))
                .display(Workbench.television(0, 4))
                .weight(Criterion.MODE_SWITCH_GAP, 40));
    }

    @Test
    void lookAlikeModesAgree() {
        compare(new Workbench()
                .modes(
                        Modes.as(
                                Modes.of(
                                        "59062500/11",
                                        "342",
                                        "262",
                                        rasterfit.timing.Scan.PROGRESSIVE,
                                        new rasterfit.gear.Window(256, 240, 64, 18)),
                                "narrow",
                                2,
                                false),
                        Modes.as(
                                Modes.of(
                                        "78750000/11",
                                        "456",
                                        "262",
                                        rasterfit.timing.Scan.PROGRESSIVE,
                                        new rasterfit.gear.Window(320, 224, 92, 26)),
                                "wide",
                                1,
                                false))
                .converters(Workbench.converter(
                        "scaler",
                        Workbench.samples(684, 858, 1368),
                        Workbench.scale(4, List.of(Workbench.locked(6000, 60)), 16, 4),
                        Workbench.repeat(2, 4))));
    }

    private void compare(Workbench bench) {
        MatchRequest request = bench.request();
        MatchResult result = bench.match();
        List<Whole> all = new ArrayList<>();
        Map<String, Whole> bestByRoute = new TreeMap<>();
        for (Route route : RouteFinder.find(request, request.equipment().converters(), List.of())) {
            if (route.isOpen()) {
                List<Whole> setups = setups(route, request);
                all.addAll(setups);
                setups.stream()
                        .max(Comparator.comparingDouble(Whole::score))
                        .ifPresent(best -> bestByRoute.put(route.key(), best));
            }
        }
        assertThat(result.counts().settings()).isEqualTo(settings);
        Map<String, Long> told = new TreeMap<>();
        result.refused().forEach(group -> told.merge(group.rule().id(), group.count(), Long::sum));
        assertThat(told).isEqualTo(refused);
        assertThat(result.ranked()).hasSize(bestByRoute.size());
        for (RankedSetup setup : result.ranked()) {
            Whole brute = bestByRoute.values().stream()
                    .min(Comparator.comparingDouble(whole -> Math.abs(whole.score() - setup.score())))
                    .orElseThrow();
            assertThat(setup.score()).isCloseTo(brute.score(), within(EVEN));
            boolean undominated = all.stream().noneMatch(other -> other.dominates(brute));
            assertThat(setup.paretoOptimal()).as("setup %d", setup.rank()).isEqualTo(undominated);
        }
    }

    private List<Whole> setups(Route route, MatchRequest request) {
        List<List<Mode>> groups = ModeGroups.of(request.source().modes(), false, Rational.of(2000));
        List<List<Open>> open = new ArrayList<>();
        for (List<Mode> group : groups) {
            open.add(openSettings(route, Captured.of(group, PixelAspectConvention.BROADCAST)));
        }
        List<Whole> setups = new ArrayList<>();
        join(route, request, open, new ArrayList<>(), setups);
        return setups;
    }

    private void join(Route route, MatchRequest request, List<List<Open>> open, List<Open> chosen, List<Whole> setups) {
        if (chosen.size() == open.size()) {
            setups.add(whole(route, request, chosen));
            return;
        }
        for (Open setting : open.get(chosen.size())) {
            chosen.add(setting);
            join(route, request, open, chosen, setups);
            chosen.remove(chosen.size() - 1);
        }
    }

    private List<Open> openSettings(Route route, Captured captured) {
        List<Open> open = new ArrayList<>();
        Layouts layouts = Layouts.of(route, captured);
        for (Refusal impossible : layouts.impossible()) {
            settings++;
            refused.merge(impossible.rule().id(), 1L, Long::sum);
        }
        for (Layout layout : layouts.possible()) {
            Tables tables = new Tables(layout, new LimitCheck(List.of()), new Tables.Known());
            for (int n = 0; n < layout.samples().length; n++) {
                for (int p = 0; p < layout.placements().size(); p++) {
                    for (int l = 0; l < layout.locks(); l++) {
                        for (int d = 0; d < layout.deinterlacers(); d++) {
                            for (int c = 0; c < layout.controls.size(); c++) {
                                look(layout, tables, n, p, l, d, c, open);
                            }
                        }
                    }
                }
            }
        }
        return open;
    }

    private void look(Layout layout, Tables tables, int n, int p, int l, int d, int c, List<Open> open) {
        settings++;
        Layout.Output output = layout.output(n, p, l, Steps.SILENT);
        List<@Nullable Refusal> reasons = new ArrayList<>();
        reasons.add(layout.sampleRefusal(n));
        reasons.add(layout.placementRefusal(n, p));
        reasons.add(output.refusal());
        reasons.add(LinkClockRules.display(output.raster().pixelClock(), Frequency.ofHz(165_000_000))
                .orElse(null));
        for (Mode mode : layout.captured.modes()) {
            reasons.add(layout.added(mode, n, p, l, d, Steps.SILENT).refusal());
        }
        Refusal first = reasons.stream()
                .filter(reason -> reason != null)
                .min(Comparator.comparingInt(reason -> Rules.position(reason.rule())))
                .orElse(null);
        if (first != null) {
            refused.merge(first.rule().id(), 1L, Long::sum);
            return;
        }
        Candidate candidate = new Candidate(tables, n, p, l, d, c, 0, 0, 0, AcceptanceGrade.LISTED, "");
        Measurer measurer = new Measurer(candidate, false);
        var measured = measurer.measure(null);
        Map<Mode, Measures> byMode = new java.util.LinkedHashMap<>();
        for (Mode mode : layout.captured.modes()) {
            byMode.put(mode, measured.measuresByMode().getOrDefault(mode.name(), measured.measures()));
        }
        open.add(new Open(
                measurer, candidate, byMode, measured.measures().acceptance().grade()));
    }

    private static Whole whole(Route route, MatchRequest request, List<Open> chosen) {
        double library = request.source().modes().stream()
                .mapToDouble(mode -> mode.share().toDouble())
                .sum();
        double[] u = new double[6];
        AcceptanceGrade grade = AcceptanceGrade.TESTED;
        for (Open open : chosen) {
            grade = grade.worse(open.grade());
            for (Map.Entry<Mode, Measures> entry : open.measures().entrySet()) {
                double share = entry.getKey().share().toDouble() / library;
                double[] own = utilities(entry.getKey(), entry.getValue());
                for (int i = 0; i < own.length; i++) {
                    u[i] += share * own[i];
                }
            }
        }
        boolean switches =
                chosen.size() > 1 && request.source().modes().stream().anyMatch(Mode::duringPlay);
        double seconds = 0.3 + (chosen.stream().allMatch(open -> isSameRaster(chosen.get(0), open)) ? 0 : 2);
        double gap = switches ? Math.pow(2, -seconds / 2) : 1;
        double cost = Math.pow(2, -priceOf(route) / 150);
        double gapWeight = switches ? request.weights().getOrDefault(Criterion.MODE_SWITCH_GAP, 1.0) : 0;
        // Even weights: uniformity, aspect, coverage, motion, latency, detail, acceptance, effort, cost, and the gap.
        double sum = u[0]
                + u[1]
                + u[2]
                + u[3]
                + u[4]
                + u[5]
                + grade.utility()
                + 1.0 / (1 + 4 / 4.0)
                + cost
                + gapWeight * gap;
        return new Whole(
                sum / (9 + gapWeight), (u[0] + u[1] + u[2] + u[3] + u[5]) / 5, u[4], grade.utility() * gap, cost);
    }

    private static double priceOf(Route route) {
        return route.leg() != null && route.leg().converter().id().equals("repeater") ? 40 : 100;
    }

    /** Equal totals and active counts, and a clock that moves by no more than 0.5 %. */
    private static boolean isSameRaster(Open a, Open b) {
        Raster one = a.candidate().raster();
        Raster other = b.candidate().raster();
        return one.horizontalActive() == other.horizontalActive()
                && one.horizontalTotal().equals(other.horizontalTotal())
                && one.verticalActive() == other.verticalActive()
                && one.verticalTotal().equals(other.verticalTotal())
                && one.scan() == other.scan()
                && Math.abs(one.pixelClock().ratioTo(other.pixelClock()).toDouble() - 1) <= 0.005;
    }

    /** Uniformity, aspect, coverage, motion, latency, detail, by the published curves. */
    private static double[] utilities(Mode mode, Measures measures) {
        Measures.Shape shape = measures.shape();
        Measures.Sampling sampling = measures.sampling();
        double perDot = sampling == null ? 1 : sampling.samplesPerDot().toDouble();
        double softness = sampling == null ? 0 : sampling.edgeSoftness();
        double dots = Math.max(0, 2 * or(shape.dotWidthRatio()) - 1) * (1 - softness);
        double lines = Math.max(0, 2 * or(shape.lineHeightRatio()) - 1);
        double error = Math.abs(shape.aspectErrorPercent().toDouble());
        double aspect = error <= 1 ? 1 : error >= 15 ? 0 : (15 - error) / 14;
        double pictureAspect =
                mode.active().dots() * measures.pixelAspectRatio().toDouble() / mode.frameLines();
        double greatest = pictureAspect < 16.0 / 9 ? 1080 * 1080 * pictureAspect : 1920 * 1920 / pictureAspect;
        double drawn = shape.coveragePercent().toDouble() / 100 * 1920 * 1080;
        double kept = (1
                        - shape.croppedUsedLines().toDouble()
                                / (mode.used().lines() * mode.scan().fieldsPerFrame()))
                * (1 - shape.croppedUsedDots().toDouble() / mode.used().dots());
        double beat = measures.dropOrRepeatEverySeconds() == null
                ? 0
                : 1 / measures.dropOrRepeatEverySeconds().toDouble();
        double motion = 1 / (1 + 4 * beat) * (measures.tearDriftPicturesPerSecond() == null ? 1 : 0.7);
        return new double[] {
            perDot < 1 ? 0 : Math.min(dots, lines),
            aspect,
            Math.min(1, drawn / greatest) * kept,
            motion,
            Math.pow(2, -measures.totalLatencyMs().typical().toDouble() / 16.7),
            measures.linkDetail() == null ? 1 : measures.linkDetail().combined().toDouble()
        };
    }

    private static double or(@Nullable Rational ratio) {
        return ratio == null ? 0 : ratio.toDouble();
    }
}
