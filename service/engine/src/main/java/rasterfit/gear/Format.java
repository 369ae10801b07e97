package rasterfit.gear;

/** How a picture is carried. Colour encodings of the composite kinds are a separate matter. */
public enum Format {
    RF,
    CVBS,
    YC,
    YPBPR,
    RGB,
    TMDS;

    public boolean isDigital() {
        return this == TMDS;
    }

    /** Whether luma and chroma share one signal or one modulated chroma, so that a colour encoding decides. */
    public boolean hasColourEncoding() {
        return this == RF || this == CVBS || this == YC;
    }
}
