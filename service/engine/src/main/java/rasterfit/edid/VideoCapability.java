package rasterfit.edid;

/**
 * The video capability data block (CTA-861-I §7.5.6).
 *
 * @param rgbRangeSelectable a source may choose between limited and full range RGB and say which it sends
 * @param yccRangeSelectable the same for YCbCr
 * @param preferredTiming whether the edges of the preferred timing are cut off
 * @param computerFormats the same for formats of computers
 * @param videoFormats the same for formats of consumer electronics
 */
public record VideoCapability(
        boolean rgbRangeSelectable,
        boolean yccRangeSelectable,
        Scan preferredTiming,
        Scan computerFormats,
        Scan videoFormats) {

    /** How much of a picture the display shows. */
    public enum Scan {
        /** Nothing said, or no such format taken. */
        NOT_STATED,
        ALWAYS_OVERSCANNED,
        ALWAYS_UNDERSCANNED,
        BOTH
    }

    static VideoCapability of(int flags) {
        return new VideoCapability(
                (flags & 0x40) != 0, (flags & 0x80) != 0, scan(flags >> 4), scan(flags >> 2), scan(flags));
    }

    private static Scan scan(int code) {
        return Scan.values()[code & 3];
    }
}
