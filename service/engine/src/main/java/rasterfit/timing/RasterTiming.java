package rasterfit.timing;

import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * A raster with its blanking in full, as video standards print it. Horizontal counts in pixels. {@code verticalActive}
 * and {@code verticalTotal} are lines per frame; the vertical porches and sync are those of one field (the first, where
 * the two fields of an interlaced frame differ by half a line), as CTA-861-I table 1 prints them.
 *
 * @param verticalTotal lines per frame: active + fields · (front porch + sync + back porch), plus 1 where interlaced
 *     fields end on half a line
 */
public record RasterTiming(
        Frequency pixelClock,
        int horizontalActive,
        int horizontalFrontPorch,
        int horizontalSync,
        int horizontalBackPorch,
        int verticalActive,
        int verticalFrontPorch,
        int verticalSync,
        int verticalBackPorch,
        int verticalTotal,
        Scan scan,
        Polarity horizontalPolarity,
        Polarity verticalPolarity) {

    public RasterTiming {
        if (horizontalFrontPorch < 0 || horizontalSync < 0 || horizontalBackPorch < 0) {
            throw new IllegalArgumentException("horizontal blanking must not be negative");
        }
        if (verticalFrontPorch < 0 || verticalSync < 0 || verticalBackPorch < 0) {
            throw new IllegalArgumentException("vertical blanking must not be negative");
        }
        int fields = scan.fieldsPerFrame();
        int extra = verticalTotal - verticalActive - fields * (verticalFrontPorch + verticalSync + verticalBackPorch);
        if (extra < 0 || extra >= fields) {
            throw new IllegalArgumentException("vertical counts do not add up to the total " + verticalTotal);
        }
    }

    /** The same counts at another clock. */
    public RasterTiming atPixelClock(Frequency clock) {
        return new RasterTiming(
                clock,
                horizontalActive,
                horizontalFrontPorch,
                horizontalSync,
                horizontalBackPorch,
                verticalActive,
                verticalFrontPorch,
                verticalSync,
                verticalBackPorch,
                verticalTotal,
                scan,
                horizontalPolarity,
                verticalPolarity);
    }

    /** The same timing with another front porch in every field; the total follows. */
    public RasterTiming withVerticalFrontPorch(int lines) {
        int total = verticalTotal + scan.fieldsPerFrame() * (lines - verticalFrontPorch);
        return new RasterTiming(
                pixelClock,
                horizontalActive,
                horizontalFrontPorch,
                horizontalSync,
                horizontalBackPorch,
                verticalActive,
                lines,
                verticalSync,
                verticalBackPorch,
                total,
                scan,
                horizontalPolarity,
                verticalPolarity);
    }

    public int horizontalTotal() {
        return horizontalActive + horizontalFrontPorch + horizontalSync + horizontalBackPorch;
    }

    /** Lines from the leading edge of vertical sync to the first active line of the (first) field. */
    public int firstActiveLine() {
        return verticalSync + verticalBackPorch;
    }

    public Raster raster() {
        return new Raster(
                pixelClock,
                horizontalActive,
                Rational.of(horizontalTotal()),
                verticalActive,
                Rational.of(verticalTotal),
                scan);
    }

    public Frequency lineRate() {
        return raster().lineRate();
    }

    public Frequency fieldRate() {
        return raster().fieldRate();
    }
}
