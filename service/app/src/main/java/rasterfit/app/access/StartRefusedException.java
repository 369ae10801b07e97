package rasterfit.app.access;

/** The service would be open to whoever asks, or to nobody. */
final class StartRefusedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String remedy;

    StartRefusedException(String message, String remedy) {
        super(message);
        this.remedy = remedy;
    }

    /** What to do about it. */
    String remedy() {
        return remedy;
    }
}
