package rasterfit.timing;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rasterfit.quantity.Rational;

/**
 * Where {@code edid-decode} (Debian, 2022-03-15 and later) is not followed, why, and how often that happens among the cases of
 * {@link FormulaOracleTest}. The numbers may only fall.
 */
public enum KnownDifference {
    /**
     * It takes 1001 × 601 for 15:9, as 601 · 15 / 9 = 1001.67 is cut to a whole number first; then sync is 7 lines long. Here
     * an aspect has to hold exactly, as in the project's reference table (1360 × 768 is not 16:9).
     */
    TRUNCATED_ASPECT(597) {
        @Override
        boolean explains(CvtRequest request, RasterTiming ours, PrintedTiming theirs, Set<String> members) {
            return ours.verticalSync() == 10
                    && verticalSyncOfTruncatedAspect(request.horizontalActive(), request.verticalActive())
                            .equals(Optional.of(theirs.verticalSync()))
                    && Set.of("vertical sync", "vertical back porch", "vertical total", "pixel clock")
                            .containsAll(members);
        }
    },

    /**
     * Early sync of version 3 in the middle of a short blanking leaves it no front porch, where CVT 2.0 moves sync back by a
     * line to keep one.
     */
    EARLY_SYNC_WITHOUT_FRONT_PORCH(44) {
        @Override
        boolean explains(CvtRequest request, RasterTiming ours, PrintedTiming theirs, Set<String> members) {
            return members.equals(Set.of("vertical front porch", "vertical back porch"))
                    && theirs.verticalFrontPorch() == 0
                    && ours.verticalFrontPorch() == 1;
        }
    },

    /**
     * The clock of reduced blanking is rounded to a step, and is a whole number of steps already; binary fractions then miss
     * by a hair and lose or gain a whole step. (1920 × 1080 at 50 Hz, version 2: 110.600 MHz, printed 110.599.)
     */
    CLOCK_ON_A_STEP(13) {
        @Override
        boolean explains(CvtRequest request, RasterTiming ours, PrintedTiming theirs, Set<String> members) {
            boolean isV3 = request.blanking() instanceof CvtBlanking.ReducedV3;
            Rational step = Rational.of(isV3 || request.blanking() instanceof CvtBlanking.ReducedV1 ? 250_000 : 1000);
            Rational exact = exactClockHz(request, ours);
            Rational missed = isV3 ? theirs.pixelClockHz().minus(exact) : exact.minus(theirs.pixelClockHz());
            return members.equals(Set.of("pixel clock"))
                    && exact.dividedBy(step).isWhole()
                    && missed.equals(step);
        }
    };

    /** At most so many cases of the test differ for this reason. */
    final int most;

    KnownDifference(int most) {
        this.most = most;
    }

    abstract boolean explains(CvtRequest request, RasterTiming ours, PrintedTiming theirs, Set<String> members);

    static Optional<KnownDifference> of(
            CvtRequest request, RasterTiming ours, PrintedTiming theirs, Set<String> members) {
        return Stream.of(values())
                .filter(known -> known.explains(request, ours, theirs, members))
                .findFirst();
    }

    /** The lines of sync of the aspect that holds once a width is cut to whole pixels. */
    public static Optional<Integer> verticalSyncOfTruncatedAspect(int horizontalActive, int verticalActive) {
        List<List<Integer>> aspects =
                List.of(List.of(4, 3, 4), List.of(16, 9, 5), List.of(16, 10, 6), List.of(5, 4, 7), List.of(15, 9, 7));
        return aspects.stream()
                .filter(aspect -> verticalActive * aspect.get(0) / aspect.get(1) == horizontalActive)
                .map(aspect -> aspect.get(2))
                .findFirst();
    }

    /** Rate · pixels per line · lines, from which the clock of every reduced blanking is rounded. */
    private static Rational exactClockHz(CvtRequest request, RasterTiming ours) {
        boolean video = request.blanking().equals(CvtBlanking.REDUCED_V2_VIDEO);
        return request.fieldRate()
                .hz()
                .times(ours.horizontalTotal())
                .times(Rational.of(ours.verticalTotal(), request.scan().fieldsPerFrame()))
                .times(video ? Rational.of(1000, 1001) : Rational.ONE);
    }
}
