package rasterfit.timing;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * One numbered video timing of CTA-861-I.
 *
 * @param vic the video identification code
 * @param variants the same timing with each number of lines per frame that table 1 allows, the one it prints first in
 *     front; only the 240- and 288-line timings have more than one (table 1 notes, §4)
 * @param otherPixelClock the clock of the same raster at the other rate of an n·6 Hz and n·6/1.001 Hz pair, absent where
 *     table 2 names a single rate (§4; VIC 1: 25.2 MHz, table 1 note c)
 * @param pixelRepetitions how many times each pixel may be sent, ascending; {@code timing} counts what is sent
 * @param pictureAspect width / height of the picture
 * @param pixelAspects width / height of a pixel as table 2 prints it, one for each of {@code pixelRepetitions}
 */
public record VideoTiming(
        int vic,
        List<RasterTiming> variants,
        @Nullable Frequency otherPixelClock,
        List<Integer> pixelRepetitions,
        Rational pictureAspect,
        List<Rational> pixelAspects) {

    public VideoTiming {
        variants = List.copyOf(variants);
        pixelRepetitions = List.copyOf(pixelRepetitions);
        pixelAspects = List.copyOf(pixelAspects);
        if (vic <= 0 || variants.isEmpty()) {
            throw new IllegalArgumentException("a video timing has a positive code and a raster: " + vic);
        }
        if (pixelRepetitions.isEmpty() || pixelRepetitions.size() != pixelAspects.size()) {
            throw new IllegalArgumentException("each pixel repetition has its pixel aspect: VIC " + vic);
        }
    }

    /** The raster that table 1 prints first. */
    public RasterTiming timing() {
        return variants.get(0);
    }

    /** Consumer electronics formats are all but VIC 1; the default range of RGB depends on it (CTA-861-I §5). */
    public boolean isCeFormat() {
        return vic != 1;
    }

    /**
     * Width / height of a sample as it is sent: picture aspect · lines / samples. This is geometry; the printed {@link
     * #pixelAspects} of VIC 25 and 27 are half of what the same geometry gives.
     */
    public Rational sampleAspect() {
        RasterTiming raster = timing();
        return pictureAspect.times(raster.verticalActive()).dividedBy(raster.horizontalActive());
    }

    /** Every raster that a sink listing this VIC accepts: each variant at both clocks, the printed one first (§4). */
    public List<RasterTiming> acceptedRasters() {
        List<RasterTiming> accepted = new ArrayList<>();
        for (RasterTiming variant : variants) {
            accepted.add(variant);
            if (otherPixelClock != null) {
                accepted.add(variant.atPixelClock(otherPixelClock));
            }
        }
        return List.copyOf(accepted);
    }
}
