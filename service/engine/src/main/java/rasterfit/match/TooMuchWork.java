package rasterfit.match;

/** A request would enumerate more settings than the stated maximum. */
public final class TooMuchWork extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final long settings;
    private final long maximum;

    public TooMuchWork(long settings, long maximum) {
        super(settings + " settings to compute, at most " + maximum + " are allowed");
        this.settings = settings;
        this.maximum = maximum;
    }

    public long settings() {
        return settings;
    }

    public long maximum() {
        return maximum;
    }
}
