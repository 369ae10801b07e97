package rasterfit.edid;

import java.util.Locale;

/** Where in an EDID a timing is listed. */
public enum TimingOrigin {
    DETAILED,
    /** A timing block of DisplayID, in an extension of its own or in one of CTA-861. */
    DISPLAYID,
    VIC,
    HDMI_VIC,
    STANDARD,
    /** A code of three bytes for CVT (E-EDID §3.10.3.8). */
    CVT_CODE,
    ESTABLISHED;

    /** {@code hdmi-vic} */
    String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
