package rasterfit.edid;

/** What kind of signal the input takes. A digital input without an HDMI data block counts as DVI (HDMI 1.3a §8.3). */
public enum VideoLink {
    ANALOG,
    DVI,
    HDMI
}
