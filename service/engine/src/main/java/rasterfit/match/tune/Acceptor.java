package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.SinkLimits;
import rasterfit.gear.SinkLimits.ListedRaster;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Measures.Deviations;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Broadcast;
import rasterfit.timing.Raster;

/**
 * How sure it is that a display shows a raster.
 *
 * <p>Listed: the same counts, pixel clock within ±0.5 % (VESA DMT's tolerance as quoted in CTA-861-I table 1 note c; its
 * use for acceptance is our assumption). Near-listed: the same active counts, vertical total within one line, line rate,
 * field rate and pixel clock each within ±0.5 %. n·6 Hz and n·6/1.001 Hz count as listed together (CTA-861-I §4).
 */
final class Acceptor {
    private static final Rational HALF_PERCENT = Rational.HALF;
    private static final Frequency FIELD_RATE_ROUNDING = Frequency.ofHz(1, 2);
    private static final Frequency LINE_RATE_ROUNDING = Frequency.ofHz(500);
    private static final Frequency CLOCK_ROUNDING = Frequency.ofHz(5_000_000);

    private final SinkLimits sink;
    private final List<Nominal> nominals;

    Acceptor(SinkLimits sink) {
        this.sink = sink;
        this.nominals = nominals(sink);
    }

    /** @param listedAs and deviations are absent where nothing listed has the same active counts */
    record Verdict(
            AcceptanceGrade grade,
            @Nullable String listedAs,
            @Nullable Rational pictureAspect,
            @Nullable Deviations deviations) {}

    /** A listed raster at one of the rates at which it counts. */
    private record Nominal(ListedRaster listed, Raster raster, String name, boolean twin) {}

    private static List<Nominal> nominals(SinkLimits sink) {
        List<Nominal> nominals = new ArrayList<>();
        for (ListedRaster listed : sink.listed()) {
            nominals.add(new Nominal(listed, listed.raster(), listed.label(), false));
            Frequency twin = twinRate(listed.raster().fieldRate());
            if (twin != null) {
                String name = listed.label() + " at " + twin.hz().toSixDigits().toPlainString() + " Hz";
                nominals.add(new Nominal(listed, listed.raster().atFieldRate(twin), name, true));
            }
        }
        return List.copyOf(nominals);
    }

    /** n·6 Hz for n·6/1.001 Hz and the other way round; absent for other rates. */
    private static @Nullable Frequency twinRate(Frequency rate) {
        if (rate.hz().dividedBy(6).isWhole()) {
            return rate.dividedBy(Broadcast.THOUSAND_AND_ONE);
        }
        Frequency raised = rate.times(Broadcast.THOUSAND_AND_ONE);
        return raised.hz().dividedBy(6).isWhole() ? raised : null;
    }

    /** An analog input promises its stated scan ranges; an input of which nothing is known promises nothing. */
    static AcceptanceGrade gradeWithoutSink(DisplayInput input) {
        return input.lineRate() != null && input.fieldRate() != null
                ? AcceptanceGrade.WITHIN_LIMITS_CONTINUOUS
                : AcceptanceGrade.LIMITS_UNKNOWN;
    }

    /**
     * A raster is held against the listed rate itself before its 1/1.001 kin. Of several that fit equally well, the one of this label is named, then one of this picture aspect.
     *
     * @param label empty if there is none
     * @param pictureAspect absent if it does not matter
     */
    Verdict grade(Raster raster, String label, @Nullable Rational pictureAspect, Steps steps) {
        Verdict verdict = verdict(raster, label, pictureAspect);
        Deviations deviations = verdict.deviations();
        if (deviations != null) {
            tellDeviations(raster, deviations, steps);
        }
        steps.tell("acceptance", step -> {
            step.in("pixel clock", raster.pixelClock().hz(), "Hz")
                    .in("line rate", raster.lineRate().hz(), "Hz")
                    .in("field rate", raster.fieldRate().hz(), "Hz")
                    .in("horizontal total", raster.horizontalTotal(), "")
                    .in("vertical total", raster.verticalTotal(), "");
            if (deviations != null) {
                step.in("compared with", deviations.against())
                        .in("pixel clock deviation", deviations.pixelClockPercent(), "%");
            }
            step.by(
                            "listed: same counts, pixel clock within ±0.5 %; near: ±1 line, all rates within ±0.5 %; else by"
                                    + " the range limits ±0.5 Hz, ±0.5 kHz, ±5 MHz",
                            "CTA-861-I table 1 note c and §4; E-EDID A2 tables 3.14, 3.26; assumption")
                    .gives(verdict.grade().name());
        });
        return verdict;
    }

    private void tellDeviations(Raster raster, Deviations deviations, Steps steps) {
        Raster nominal = nominals.stream()
                .filter(each -> each.name().equals(deviations.against()) && raster.hasSameActiveAs(each.raster()))
                .map(Nominal::raster)
                .findFirst()
                .orElseThrow();
        steps.tell(
                "deviations",
                step -> step.in("against", deviations.against())
                        .in("its pixel clock", nominal.pixelClock().hz(), "Hz")
                        .in("its line rate", nominal.lineRate().hz(), "Hz")
                        .in("its field rate", nominal.fieldRate().hz(), "Hz")
                        .in("its totals", nominal.horizontalTotal() + " × " + nominal.verticalTotal())
                        .by("100 · (own / its − 1) for the rates, own − its for the totals", "definition")
                        .gives("pixel clock " + percent(deviations.pixelClockPercent()) + ", line rate "
                                + percent(deviations.lineRatePercent()) + ", field rate "
                                + percent(deviations.fieldRatePercent())));
    }

    private static String percent(Rational value) {
        return Steps.write(value, "%");
    }

    private Verdict verdict(Raster raster, String label, @Nullable Rational pictureAspect) {
        Fit best = null;
        for (Nominal nominal : nominals) {
            if (raster.hasSameActiveAs(nominal.raster())) {
                Fit fit = fit(raster, nominal, label, pictureAspect);
                best = best == null || Fit.BETTER_FIRST.compare(fit, best) < 0 ? fit : best;
            }
        }
        if (best == null || best.grade() == 0) {
            return new Verdict(byLimits(raster), null, null, best == null ? null : best.deviations());
        }
        ListedRaster listed = best.nominal().listed();
        return new Verdict(
                best.grade() == 2 ? AcceptanceGrade.LISTED : AcceptanceGrade.NEAR_LISTED,
                listed.label(),
                listed.pictureAspect(),
                best.deviations());
    }

    /**
     * How well a raster fits a listed one.
     *
     * @param grade 2 listed, 1 nearly listed, 0 neither
     * @param kinship 2 the label asked for, 1 the aspect asked for, 0 neither
     */
    private record Fit(Nominal nominal, Deviations deviations, int grade, Rational size, int kinship) {
        static final Comparator<Fit> BETTER_FIRST = Comparator.comparingInt((Fit fit) -> -fit.grade())
                .thenComparing(fit -> fit.nominal().twin())
                .thenComparing(Fit::size)
                .thenComparingInt(fit -> -fit.kinship());
    }

    private static Fit fit(Raster raster, Nominal nominal, String label, @Nullable Rational pictureAspect) {
        Deviations deviations = deviations(raster, nominal);
        boolean listed = raster.hasSameCountsAs(nominal.raster()) && isSmall(deviations.pixelClockPercent());
        boolean sameAspect = pictureAspect != null
                && Objects.equals(pictureAspect, nominal.listed().pictureAspect());
        return new Fit(
                nominal,
                deviations,
                listed ? 2 : isNear(deviations) ? 1 : 0,
                size(deviations),
                nominal.listed().label().equals(label) ? 2 : sameAspect ? 1 : 0);
    }

    private static Deviations deviations(Raster raster, Nominal nominal) {
        Raster other = nominal.raster();
        return new Deviations(
                nominal.name(),
                raster.horizontalTotal().minus(other.horizontalTotal()),
                raster.verticalTotal().minus(other.verticalTotal()),
                raster.lineRate().percentFrom(other.lineRate()),
                raster.fieldRate().percentFrom(other.fieldRate()),
                raster.pixelClock().percentFrom(other.pixelClock()));
    }

    private static boolean isNear(Deviations deviations) {
        return !deviations.verticalTotal().abs().isGreaterThan(Rational.ONE)
                && isSmall(deviations.lineRatePercent())
                && isSmall(deviations.fieldRatePercent())
                && isSmall(deviations.pixelClockPercent());
    }

    private static boolean isSmall(Rational percent) {
        return !percent.abs().isGreaterThan(HALF_PERCENT);
    }

    private static Rational size(Deviations deviations) {
        return deviations
                .pixelClockPercent()
                .abs()
                .max(deviations.lineRatePercent().abs())
                .max(deviations.fieldRatePercent().abs());
    }

    private AcceptanceGrade byLimits(Raster raster) {
        boolean larger = !sink.listed().isEmpty()
                && (sink.listed().stream()
                                .allMatch(listed -> listed.raster().horizontalActive() < raster.horizontalActive())
                        || sink.listed().stream()
                                .allMatch(listed -> listed.raster().verticalActive() < raster.verticalActive()));
        FrequencyRange fieldRate = sink.fieldRate();
        FrequencyRange lineRate = sink.lineRate();
        if (fieldRate == null || lineRate == null) {
            return larger ? AcceptanceGrade.LARGER_THAN_LISTED : AcceptanceGrade.LIMITS_UNKNOWN;
        }
        boolean inside = within(raster.fieldRate(), fieldRate, FIELD_RATE_ROUNDING)
                && within(raster.lineRate(), lineRate, LINE_RATE_ROUNDING)
                && isWithinClock(raster.pixelClock());
        if (!inside) {
            return AcceptanceGrade.OUTSIDE_LIMITS;
        }
        if (sink.continuous()) {
            return AcceptanceGrade.WITHIN_LIMITS_CONTINUOUS;
        }
        return larger ? AcceptanceGrade.LARGER_THAN_LISTED : AcceptanceGrade.WITHIN_LIMITS_NOT_PROMISED;
    }

    private boolean isWithinClock(Frequency clock) {
        Frequency greatest = sink.maxPixelClock();
        return greatest == null || !clock.hz().isGreaterThan(greatest.hz().plus(CLOCK_ROUNDING.hz()));
    }

    /** Range fields are rounded, so both ends give way by half of their unit. */
    private static boolean within(Frequency value, FrequencyRange range, Frequency rounding) {
        return !value.hz().isLessThan(range.min().hz().minus(rounding.hz()))
                && !value.hz().isGreaterThan(range.max().hz().plus(rounding.hz()));
    }
}
