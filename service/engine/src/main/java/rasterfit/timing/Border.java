package rasterfit.timing;

/**
 * Unblanked but empty pixels and lines between the active picture and the blanking: the borders of VESA DMT, the margins of
 * CVT and GTF. A {@link RasterTiming} counts them to its porches.
 *
 * @param horizontalPixels on the left, and as many on the right
 * @param verticalLines on top of every field, and as many at its bottom
 */
public record Border(int horizontalPixels, int verticalLines) {
    public static final Border NONE = new Border(0, 0);

    public Border {
        if (horizontalPixels < 0 || verticalLines < 0) {
            throw new IllegalArgumentException("a border must not be negative");
        }
    }
}
