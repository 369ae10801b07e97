package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.List;
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
    private record Nominal(ListedRaster listed, Raster raster, String name) {}

    private static List<Nominal> nominals(SinkLimits sink) {
        List<Nominal> nominals = new ArrayList<>();
        for (ListedRaster listed : sink.listed()) {
            nominals.add(new Nominal(listed, listed.raster(), listed.label()));
            Frequency twin = twinRate(listed.raster().fieldRate());
            if (twin != null) {
                String name = listed.label() + " at " + twin.hz().toSixDigits().toPlainString() + " Hz";
                nominals.add(new Nominal(listed, listed.raster().atFieldRate(twin), name));
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

    Verdict grade(Raster raster, Steps steps) {
        Verdict verdict = verdict(raster);
        Deviations deviations = verdict.deviations();
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

    private Verdict verdict(Raster raster) {
        Nominal best = null;
        Deviations bestDeviations = null;
        boolean bestListed = false;
        boolean bestNear = false;
        for (Nominal nominal : nominals) {
            if (!raster.hasSameActiveAs(nominal.raster())) {
                continue;
            }
            Deviations deviations = deviations(raster, nominal);
            boolean listed = raster.hasSameCountsAs(nominal.raster()) && isSmall(deviations.pixelClockPercent());
            boolean near = listed || isNear(deviations);
            boolean better = bestDeviations == null
                    || (listed && !bestListed)
                    || (listed == bestListed && near && !bestNear)
                    || (listed == bestListed
                            && near == bestNear
                            && size(deviations).isLessThan(size(bestDeviations)));
            if (better) {
                best = nominal;
                bestDeviations = deviations;
                bestListed = listed;
                bestNear = near;
            }
        }
        if (best != null && bestNear) {
            return new Verdict(
                    bestListed ? AcceptanceGrade.LISTED : AcceptanceGrade.NEAR_LISTED,
                    best.listed().label(),
                    best.listed().pictureAspect(),
                    bestDeviations);
        }
        return new Verdict(byLimits(raster), null, null, bestDeviations);
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
