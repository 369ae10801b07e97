package rasterfit.gear;

/** The kind of a digital link: DVI signals neither sound, picture aspect nor range. */
public enum LinkKind {
    DVI,
    HDMI
}
