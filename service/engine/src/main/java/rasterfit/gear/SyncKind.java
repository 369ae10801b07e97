package rasterfit.gear;

/** Where an analog signal carries its sync. */
public enum SyncKind {
    COMPOSITE_SYNC,
    SYNC_ON_COMPOSITE,
    SYNC_ON_LUMA,
    SYNC_ON_GREEN,
    SEPARATE_SYNC;

    /** Whether a sync separator has to find the sync inside a video signal (it adds jitter of its own). */
    public boolean rides() {
        return this == SYNC_ON_COMPOSITE || this == SYNC_ON_LUMA || this == SYNC_ON_GREEN;
    }
}
