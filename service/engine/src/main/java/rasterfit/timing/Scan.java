package rasterfit.timing;

/** How the lines of a frame are sent. */
public enum Scan {
    PROGRESSIVE(1),
    INTERLACED(2);

    private final int fieldsPerFrame;

    Scan(int fieldsPerFrame) {
        this.fieldsPerFrame = fieldsPerFrame;
    }

    public int fieldsPerFrame() {
        return fieldsPerFrame;
    }
}
