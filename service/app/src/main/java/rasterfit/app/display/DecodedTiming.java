package rasterfit.app.display;

import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.app.answer.TimingAnswer;
import rasterfit.edid.AcceptedTiming;
import rasterfit.edid.Chroma420;
import rasterfit.edid.NominalFormat;
import rasterfit.edid.TimingBasis;
import rasterfit.edid.TimingOrigin;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Scan;

/**
 * A timing that a display lists.
 *
 * @param label as {@code listedAs} in an answer to a match
 * @param vic of a VIC only
 * @param hdmiVic of an HDMI VIC only
 * @param timing absent for a number without a published timing, and where a formula leaves no room for blanking
 * @param nominal what the EDID gives of standard timings, CVT codes and established timings
 * @param basis where {@code timing} comes from
 * @param pictureAspect where the timing fixes it
 * @param preferred whether a source should choose it first; DisplayID may mark more, and the first in the list counts
 * @param nativeFormat whether the display declares it native
 * @param chroma420 whether it is taken in YCbCr 4:2:0
 * @param chroma420Only whether it is taken in YCbCr 4:2:0 alone
 */
record DecodedTiming(
        TimingOrigin origin,
        String label,
        @Nullable Integer vic,
        @Nullable Integer hdmiVic,
        @Nullable TimingAnswer timing,
        @Nullable Nominal nominal,
        TimingBasis basis,
        @Nullable String pictureAspect,
        boolean preferred,
        boolean nativeFormat,
        boolean chroma420,
        boolean chroma420Only) {

    /** A size and a rate as rounded by the EDID. */
    record Nominal(int horizontalActive, int verticalActive, Scan scan, String fieldRateHz) {
        static Nominal of(NominalFormat format) {
            return new Nominal(
                    format.horizontalActive(),
                    format.verticalActive(),
                    format.scan(),
                    Plain.exact(Frequency.ofHz(format.fieldRateHz())));
        }
    }

    static DecodedTiming of(AcceptedTiming timing) {
        return new DecodedTiming(
                timing.origin(),
                timing.label(),
                timing.vic(),
                timing.hdmiVic(),
                timing.timing() == null ? null : TimingAnswer.of(timing.timing()),
                timing.nominal() == null ? null : Nominal.of(timing.nominal()),
                timing.basis(),
                timing.pictureAspect().map(Object::toString).orElse(null),
                timing.preferred(),
                timing.nativeFormat(),
                timing.chroma420() != Chroma420.NOT_LISTED,
                timing.chroma420() == Chroma420.ONLY);
    }
}
