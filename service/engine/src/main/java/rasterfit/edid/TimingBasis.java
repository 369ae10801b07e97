package rasterfit.edid;

/** Where the raster of a listed timing comes from. */
public enum TimingBasis {
    /** The EDID spells it out. */
    STATED,
    /** The EDID gives a number of CTA-861-I table 1. */
    CTA_861,
    /** The EDID gives an HDMI VIC. */
    HDMI,
    /** The EDID gives a code, or a size and a rate, of VESA DMT 1.13. */
    DMT,
    /** The EDID gives a size and a rate, and VESA GTF 1.1 the rest. */
    GTF,
    /** The EDID gives a size and a rate, and VESA CVT the rest. */
    CVT,
    /** The EDID sets a bit for a timing that a computer maker used (E-EDID table 3.18). */
    MAKERS_TABLE,
    /** No raster is known. */
    UNKNOWN
}
