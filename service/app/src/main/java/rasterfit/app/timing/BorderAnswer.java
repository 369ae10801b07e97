package rasterfit.app.timing;

import org.jspecify.annotations.Nullable;
import rasterfit.timing.Border;

/** Empty pixels and lines around the picture, on each side; lines are those of a field. The porches include them. */
record BorderAnswer(int horizontalPixels, int verticalLines) {
    static BorderAnswer of(Border border) {
        return new BorderAnswer(border.horizontalPixels(), border.verticalLines());
    }

    static @Nullable BorderAnswer orAbsent(Border border) {
        return border.equals(Border.NONE) ? null : of(border);
    }
}
