package rasterfit.app.transfer;

/** How an import stands. Only in {@link #DONE} anything of it was written, and then all of it. */
enum ImportState {
    RUNNING,
    DONE,
    /** Its document is faulty, or the catalogue could not be written. */
    FAILED,
    /** A client ended it. */
    CANCELLED,
    /** The instance that worked on it is gone. */
    LOST
}
