package rasterfit.identify;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.LineStandard;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Broadcast;

/** A dot clock as a multiple of a broadcast clock. */
public record DotClock(Reference reference, Rational factor) {

    /** The clocks that equipment multiplies and divides. */
    @SuppressWarnings(
            "Immutable") // a frequency is, but may not carry the annotation: the engine uses nothing but the JDK
    public enum Reference {
        SUBCARRIER_525(Broadcast.SUBCARRIER_525, LineStandard.L525_60, "sc", "SMPTE 170M: the subcarrier, 315/88 MHz"),
        SUBCARRIER_625(
                Broadcast.SUBCARRIER_625, LineStandard.L625_50, "sc", "ITU-R BT.1700: the subcarrier, 4.43361875 MHz"),
        LUMA_SAMPLING(Broadcast.LUMA_SAMPLING, null, "luma", "ITU-R BT.601: luma sampling, 13.5 MHz"),
        SQUARE_PIXEL_525(
                Broadcast.SQUARE_PIXEL_525,
                LineStandard.L525_60,
                "square",
                "common practice: square pixels, 780 samples of a 525-line system's line"),
        SQUARE_PIXEL_625(
                Broadcast.SQUARE_PIXEL_625,
                LineStandard.L625_50,
                "square",
                "common practice: square pixels, 944 samples of a 625-line system's line");

        private final Frequency rate;
        private final @Nullable LineStandard standard;
        private final String slug;
        private final String source;

        Reference(Frequency rate, @Nullable LineStandard standard, String slug, String source) {
            this.rate = rate;
            this.standard = standard;
            this.slug = slug;
            this.source = source;
        }

        public Frequency rate() {
            return rate;
        }

        /** Where the rate is defined. */
        public String source() {
            return source;
        }

        /** The system that the clock belongs to; null if to both. */
        @Nullable
        LineStandard standard() {
            return standard;
        }
    }

    /** The multiples in use (common practice), ascending within a reference. */
    private static final List<DotClock> ALL = Stream.of(
                    multiples(Reference.SUBCARRIER_525, "1", "6/5", "4/3", "3/2", "15/8", "2", "12/5", "3", "4"),
                    multiples(Reference.SUBCARRIER_625, "1", "6/5", "4/3", "3/2", "8/5", "5/3", "2", "12/5", "3", "4"),
                    multiples(Reference.LUMA_SAMPLING, "1/2", "1", "2"),
                    multiples(Reference.SQUARE_PIXEL_525, "1/2", "1"),
                    multiples(Reference.SQUARE_PIXEL_625, "1/2", "1"))
            .flatMap(clocks -> clocks)
            .toList();

    public static List<DotClock> all() {
        return ALL;
    }

    private static Stream<DotClock> multiples(Reference reference, String... factors) {
        return Stream.of(factors).map(factor -> new DotClock(reference, Rational.parse(factor)));
    }

    public Frequency rate() {
        return reference.rate.times(factor);
    }

    /** {@code sc3over2}: a part of an id. */
    String slug() {
        return reference.slug + slug(factor);
    }

    static String slug(Rational number) {
        return number.toString().replace("/", "over");
    }
}
