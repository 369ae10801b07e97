package rasterfit.gear;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/** What finally shows the picture. */
public sealed interface Panel {
    /** Width to height of the visible face. */
    Rational aspect();

    /** A fixed grid of square pixels. */
    record Grid(int columns, int rows, @Nullable SizeMm size, Filter filter) implements Panel {
        public Grid {
            if (columns <= 0 || rows <= 0) {
                throw new IllegalArgumentException("a panel has at least one column and one row");
            }
        }

        @Override
        public Rational aspect() {
            return Rational.of(columns, rows);
        }
    }

    /** A raster tube: no grid, the raster itself is the measure. */
    record Tube(Rational aspect) implements Panel {}

    /** How a grid resamples a raster of another size. */
    enum Filter {
        NEAREST,
        INTERPOLATING
    }

    record SizeMm(int width, int height) {}
}
