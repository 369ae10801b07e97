package rasterfit.match.tune;

import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.match.PixelAspectConvention;
import rasterfit.quantity.Rational;

/**
 * The 4:3 picture that a broadcast raster is meant to fill on a tube: 480 (525-line) or 576 (625-line) lines per frame,
 * half of them where every field is progressive, and as many dots as make it 4:3.
 */
final class NominalPicture {
    private static final Rational FOUR_TO_THREE = Rational.of(4, 3);

    private NominalPicture() {}

    static int frameLines(Captured captured) {
        Mode lead = captured.lead();
        int own = captured.lines() * captured.fieldsPerFrame();
        if (lead.lineStandard() == LineStandard.OTHER) {
            return own;
        }
        int frame = lead.lineStandard() == LineStandard.L525_60 ? 480 : 576;
        return Math.max(own, lead.isHalfHeightProgressive() ? frame / 2 : frame);
    }

    /** Lines per field of the picture class to which a raster belongs. */
    static int fieldLines(Captured captured) {
        return frameLines(captured) / captured.fieldsPerFrame();
    }

    /** Dots of the lead mode. */
    static Rational dots(Captured captured) {
        Rational shape = PixelAspect.onTube(captured.lead(), PixelAspectConvention.BROADCAST, Steps.SILENT);
        return FOUR_TO_THREE.times(frameLines(captured)).dividedBy(shape);
    }
}
