package rasterfit.gear;

/** How a decoder takes luma and chroma of composite video apart. */
public enum Separation {
    /** A stop band around the subcarrier: fine luma is lost with the chroma. */
    NOTCH,
    /** Sums and differences of lines; works where the subcarrier turns over from line to line. */
    COMB
}
