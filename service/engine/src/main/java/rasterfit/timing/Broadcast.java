package rasterfit.timing;

import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * The clocks from which 525- and 625-line equipment derives its rates, exact. Sources: CTA-861-I §4 (the factor
 * 1000/1001), ITU-R BT.1700 (subcarriers), ITU-R BT.601 (13.5 MHz); the square-pixel rates are common practice (780 and
 * 944 samples per standard line).
 */
public final class Broadcast {
    /** Colour subcarrier of the 525-line system: 315/88 MHz. */
    public static final Frequency SUBCARRIER_525 = Frequency.ofHz(315_000_000, 88);

    /** Colour subcarrier of the 625-line system: 4.43361875 MHz. */
    public static final Frequency SUBCARRIER_625 = Frequency.ofHz(17_734_475, 4);

    /** 4.5 MHz / 286. */
    public static final Frequency LINE_RATE_525 = Frequency.ofHz(4_500_000, 286);

    public static final Frequency LINE_RATE_625 = Frequency.ofHz(15_625);

    /** 60 / 1.001 fields per second. */
    public static final Frequency FIELD_RATE_525 = Frequency.ofHz(60_000, 1001);

    public static final Frequency FIELD_RATE_625 = Frequency.ofHz(50);

    /** Luma sampling of both systems, ITU-R BT.601. */
    public static final Frequency LUMA_SAMPLING = Frequency.ofHz(13_500_000);

    /** 780 samples per standard 525-line: 135/11 MHz (common practice). */
    public static final Frequency SQUARE_PIXEL_525 = Frequency.ofHz(135_000_000, 11);

    /** 944 samples per standard 625-line: 14.75 MHz (common practice). */
    public static final Frequency SQUARE_PIXEL_625 = Frequency.ofHz(14_750_000);

    /** The ratio between a nominal 60 Hz family rate and its 1/1.001 kin (CTA-861-I §4). */
    public static final Rational THOUSAND_AND_ONE = Rational.of(1001, 1000);

    private Broadcast() {}
}
