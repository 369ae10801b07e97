package rasterfit.match.tune;

import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.quantity.Rational;

/**
 * The areas against which coverage is measured, in panel pixels (on a tube in squares of its height).
 *
 * @param panel the whole visible face
 * @param greatest the largest area with the aspect of the mode's active picture
 */
record PictureArea(Rational panel, Rational panelRows, Rational greatest) {
    static PictureArea of(Panel panel, Mode mode, Rational pixelAspect) {
        Rational rows = panel instanceof Panel.Grid grid ? Rational.of(grid.rows()) : Rational.ONE;
        Rational columns = rows.times(panel.aspect());
        Rational aspect = Rational.of(mode.active().dots()).times(pixelAspect).dividedBy(mode.frameLines());
        Rational greatest = aspect.isLessThan(panel.aspect())
                ? rows.times(rows).times(aspect)
                : columns.times(columns).dividedBy(aspect);
        return new PictureArea(columns.times(rows), rows, greatest);
    }
}
