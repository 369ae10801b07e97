package rasterfit.gear;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/**
 * One input of a converter.
 *
 * @param accepts formats with their sync kinds
 * @param lineRate absent where not stated
 * @param fieldRate absent where not stated
 * @param halfHeightAddedFields fields of delay where a half-height raster is taken as interlaced
 * @param lineRateResolutionPpm line rates nearer than this look the same
 * @param digitiser absent on digital inputs
 */
public record ConverterInput(
        String id,
        Plug plug,
        Level level,
        List<Carried> accepts,
        @Nullable FrequencyRange lineRate,
        @Nullable FrequencyRange fieldRate,
        Set<Scan> scans,
        HalfHeight halfHeight,
        Fact halfHeightAddedFields,
        Rational lineRateResolutionPpm,
        @Nullable Digitiser digitiser) {

    public ConverterInput {
        accepts = List.copyOf(accepts);
        scans = Set.copyOf(scans);
    }

    /** The same with another digitiser. */
    public ConverterInput withDigitiser(Digitiser other) {
        return copy(halfHeightAddedFields, other);
    }

    /** The same with another delay of half-height rasters. */
    public ConverterInput withHalfHeightAddedFields(Fact other) {
        return copy(other, digitiser);
    }

    private ConverterInput copy(Fact newHalfHeightAddedFields, @Nullable Digitiser newDigitiser) {
        return new ConverterInput(
                id,
                plug,
                level,
                accepts,
                lineRate,
                fieldRate,
                scans,
                halfHeight,
                newHalfHeightAddedFields,
                lineRateResolutionPpm,
                newDigitiser);
    }
}
