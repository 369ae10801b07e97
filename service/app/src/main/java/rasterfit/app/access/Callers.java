package rasterfit.app.access;

/** Knows who is calling. */
public interface Callers {
    /**
     * Who sent the request that the current thread handles.
     *
     * @throws IllegalStateException in a thread that handles none, where tokens are asked for; work that goes on after the answer takes its owner along
     */
    Caller current();
}
