package rasterfit.edid;

/** How an analog input takes its sync (E-EDID table 3.11, byte 14h bits 3–1). */
public enum AnalogSync {
    SEPARATE_SYNC,
    /** On the horizontal line. */
    COMPOSITE_SYNC,
    SYNC_ON_GREEN
}
