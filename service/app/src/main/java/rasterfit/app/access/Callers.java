package rasterfit.app.access;

/** Knows who is calling. */
public interface Callers {
    /** Who sent the request that the current thread handles. */
    Caller current();
}
