package rasterfit.gear;

/** A part of a field's raster, 0-based, dots and lines counted from the leading edges of sync. */
public record Window(int dots, int lines, int firstDot, int firstLine) {
    public Window {
        if (dots <= 0 || lines <= 0 || firstDot < 0 || firstLine < 0) {
            throw new IllegalArgumentException("a window has at least one dot and one line and starts at 0 or later");
        }
    }

    public boolean contains(Window inner) {
        return inner.firstDot >= firstDot
                && inner.firstLine >= firstLine
                && inner.firstDot + inner.dots <= firstDot + dots
                && inner.firstLine + inner.lines <= firstLine + lines;
    }
}
