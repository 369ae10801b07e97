package rasterfit.match.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Mode;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Criterion;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.CriterionValue;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;
import rasterfit.match.tune.Candidate;
import rasterfit.match.tune.Curves;
import rasterfit.match.tune.Measurer;
import rasterfit.match.tune.Scoring;
import rasterfit.quantity.Rational;
import rasterfit.rule.Finding;

/** Works out in full what is returned. */
public final class Materialiser {
    private final MatchRequest request;
    private final List<Finding> everywhere;

    /** @param everywhere findings that belong to every setup */
    Materialiser(MatchRequest request, List<Finding> everywhere) {
        this.request = request;
        this.everywhere = everywhere;
    }

    List<RankedSetup> materialise(Ranker.Ranking ranking) {
        List<RankedSetup> ranked = new ArrayList<>();
        for (Setup setup : ranking.best()) {
            ranked.add(materialise(setup, ranked.size() + 1, ranking));
        }
        return ranked;
    }

    private RankedSetup materialise(Setup setup, int rank, Ranker.Ranking ranking) {
        List<ModeSetting> settings = new ArrayList<>();
        List<Measurer> measurers = new ArrayList<>();
        for (int group = 0; group < setup.settings().size(); group++) {
            Candidate chosen = setup.settings().get(group);
            Measurer measurer = new Measurer(chosen, request.explain() == MatchRequest.Explanation.FULL);
            settings.add(measurer.measure(fallback(setup, group, ranking)));
            measurers.add(measurer);
        }
        List<CriterionValue> criteria = criteria(setup, settings, measurers);
        double score = criteria.stream()
                .mapToDouble(value -> value.weight() * value.utility())
                .sum();
        List<Finding> findings = new ArrayList<>(everywhere);
        findings.addAll(new SetupFindings(setup, settings, measurers, request).all());
        return new RankedSetup(
                rank,
                score,
                ranking.isUndominated(setup),
                setup.tuned().price().told(),
                setup.tuned().route().steps(request.owned()),
                settings,
                criteria,
                findings);
    }

    /** The best setting on the same equipment that is tested, listed or near-listed, where the chosen one is none of these. */
    private static Measures.@Nullable Fallback fallback(Setup setup, int group, Ranker.Ranking ranking) {
        Candidate chosen = setup.settings().get(group);
        if (chosen.grade().isAtLeast(AcceptanceGrade.NEAR_LISTED)) {
            return null;
        }
        Setup best = ranking.candidates(setup, group).stream()
                .filter(candidate -> candidate.grade().isAtLeast(AcceptanceGrade.NEAR_LISTED))
                .map(candidate -> setup.instead(group, candidate))
                .max(Comparator.comparingDouble(Setup::score))
                .orElse(null);
        if (best == null) {
            return null;
        }
        Candidate candidate = best.settings().get(group);
        ModeSetting measured = new Measurer(candidate, false).measure(null);
        return new Measures.Fallback(
                candidate.grade(), measured.measures().acceptance().listedAs(), measured.settings(), best.score());
    }

    private static List<CriterionValue> criteria(Setup setup, List<ModeSetting> settings, List<Measurer> measurers) {
        Scoring scoring = setup.tuned().scoring();
        List<ModeShare> modes = modes(setup, settings, measurers);
        List<CriterionValue> values = new ArrayList<>();
        for (Criterion criterion : Criterion.values()) {
            if (scoring.applies(criterion)) {
                values.add(value(criterion, setup, modes, scoring.weight(criterion)));
            }
        }
        return values;
    }

    /** One mode with its measures and its share of the library. */
    private record ModeShare(Mode mode, double share, Measures measures, Measurer measurer) {}

    private static List<ModeShare> modes(Setup setup, List<ModeSetting> settings, List<Measurer> measurers) {
        double library = setup.tuned().groups().stream()
                .flatMap(group -> group.modes().stream())
                .mapToDouble(mode -> mode.share().toDouble())
                .sum();
        List<ModeShare> modes = new ArrayList<>();
        for (int group = 0; group < settings.size(); group++) {
            Map<String, Measures> byMode = settings.get(group).measuresByMode();
            for (Mode mode : setup.tuned().groups().get(group).modes()) {
                Measures measures =
                        byMode.getOrDefault(mode.name(), settings.get(group).measures());
                modes.add(new ModeShare(mode, mode.share().toDouble() / library, measures, measurers.get(group)));
            }
        }
        return modes;
    }

    private static CriterionValue value(Criterion criterion, Setup setup, List<ModeShare> modes, double weight) {
        return switch (criterion) {
            case ACCEPTANCE -> new CriterionValue(criterion, null, Curves.acceptance(setup.grade()), weight);
            case MODE_SWITCH_GAP -> {
                double seconds = SwitchGap.seconds(setup);
                yield new CriterionValue(criterion, exact(seconds), Curves.gap(seconds), weight);
            }
            case EFFORT -> {
                double changes = Effort.changes(setup.tuned().route());
                yield new CriterionValue(criterion, exact(changes), Curves.effort(changes), weight);
            }
            case COST -> {
                Rational amount =
                        Rational.of(Objects.requireNonNull(setup.tuned().price().amount()));
                yield new CriterionValue(criterion, amount, Curves.cost(amount.toDouble()), weight);
            }
            default -> overModes(criterion, modes, weight);
        };
    }

    /** The mean over the modes, weighted by their shares. */
    private static CriterionValue overModes(Criterion criterion, List<ModeShare> modes, double weight) {
        Rational mean = Rational.ZERO;
        double utility = 0;
        Rational shares = Rational.ZERO;
        for (ModeShare mode : modes) {
            mean = mean.plus(valueOf(criterion, mode).times(mode.mode().share()));
            shares = shares.plus(mode.mode().share());
            utility += mode.share() * utilityOf(criterion, mode);
        }
        return new CriterionValue(criterion, mean.dividedBy(shares), utility, weight);
    }

    private static Rational valueOf(Criterion criterion, ModeShare mode) {
        Measures measures = mode.measures();
        return switch (criterion) {
            case DOT_UNIFORMITY ->
                orOne(measures.shape().dotWidthRatio())
                        .min(orOne(measures.shape().lineHeightRatio()));
            case ASPECT -> measures.shape().aspectErrorPercent().abs();
            case COVERAGE -> measures.shape().coveragePercent();
            case MOTION -> beat(measures);
            case LATENCY -> measures.totalLatencyMs().typical();
            case LINK_DETAIL ->
                measures.linkDetail() == null
                        ? Rational.ONE
                        : measures.linkDetail().combined();
            case ACCEPTANCE, MODE_SWITCH_GAP, EFFORT, COST ->
                throw new IllegalArgumentException(criterion + " belongs to the setup, not to a mode");
        };
    }

    private static double utilityOf(Criterion criterion, ModeShare mode) {
        Measures measures = mode.measures();
        Measures.Shape shape = measures.shape();
        return switch (criterion) {
            case DOT_UNIFORMITY -> uniformity(measures);
            case ASPECT -> Curves.aspect(shape.aspectErrorPercent().toDouble());
            case COVERAGE ->
                Curves.coverage(
                        shape.coveragePercent().toDouble()
                                / 100
                                * mode.measurer().panelArea(mode.mode()),
                        mode.measurer().greatestArea(mode.mode()),
                        1
                                - shape.croppedUsedLines().toDouble()
                                        / (mode.mode().used().lines()
                                                * mode.mode().scan().fieldsPerFrame()),
                        1
                                - shape.croppedUsedDots().toDouble()
                                        / mode.mode().used().dots());
            case MOTION ->
                Curves.motion(
                        beat(measures).toDouble(),
                        mode.measurer().showsWholeFrames(),
                        measures.tearDriftPicturesPerSecond() != null);
            case LATENCY -> Curves.latency(measures.totalLatencyMs().typical().toDouble());
            case LINK_DETAIL -> valueOf(criterion, mode).toDouble();
            case ACCEPTANCE, MODE_SWITCH_GAP, EFFORT, COST ->
                throw new IllegalArgumentException(criterion + " belongs to the setup, not to a mode");
        };
    }

    private static double uniformity(Measures measures) {
        Measures.Sampling sampling = measures.sampling();
        if (sampling != null && sampling.samplesPerDot().isLessThan(Rational.ONE)) {
            return 0;
        }
        Measures.Shape shape = measures.shape();
        double dots = Curves.evenness(orOne(shape.dotWidthRatio()).toDouble());
        double lines = Curves.evenness(orOne(shape.lineHeightRatio()).toDouble());
        return Curves.uniformity(dots, sampling == null ? 0 : sampling.edgeSoftness(), lines);
    }

    private static Rational beat(Measures measures) {
        Rational every = measures.dropOrRepeatEverySeconds();
        return every == null ? Rational.ZERO : every.reciprocal();
    }

    /** What cannot be counted (the dots of an analog input) does not speak against a picture. */
    private static Rational orOne(@Nullable Rational value) {
        return value == null ? Rational.ONE : value;
    }

    private static Rational exact(double value) {
        return Rational.of(new java.math.BigDecimal(value));
    }
}
