package rasterfit.edid;

import org.jspecify.annotations.Nullable;
import rasterfit.timing.RasterTiming;

/**
 * A timing of a DisplayID block, before it gets its place in the list of the whole EDID.
 *
 * @param timing absent for a number without a published timing
 * @param basis {@link TimingBasis#STATED}, {@code CVT}, {@code DMT}, {@code CTA_861} or {@code HDMI}: which kind of
 *     block, and of {@code code}, it is
 * @param code the DMT id, VIC or HDMI VIC where the block gives a number
 */
record DisplayIdTiming(
        @Nullable RasterTiming timing,
        TimingBasis basis,
        @Nullable Integer code,
        boolean preferred,
        Chroma420 chroma420) {

    static DisplayIdTiming stated(RasterTiming timing, boolean preferred, Chroma420 chroma420) {
        return new DisplayIdTiming(timing, TimingBasis.STATED, null, preferred, chroma420);
    }

    static DisplayIdTiming byFormula(RasterTiming timing, boolean preferred, Chroma420 chroma420) {
        return new DisplayIdTiming(timing, TimingBasis.CVT, null, preferred, chroma420);
    }

    static DisplayIdTiming coded(@Nullable RasterTiming timing, TimingBasis basis, int code, Chroma420 chroma420) {
        return new DisplayIdTiming(timing, basis, code, false, chroma420);
    }

    /** @param number its place among the timings of DisplayID, from 1 */
    AcceptedTiming accepted(int number) {
        return AcceptedTiming.ofDisplayId(number, timing, basis, code, preferred, chroma420);
    }
}
