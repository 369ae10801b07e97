package rasterfit.edid;

import java.util.Locale;

/** Where in an EDID a timing is listed. */
public enum TimingOrigin {
    DETAILED,
    VIC,
    HDMI_VIC,
    STANDARD,
    ESTABLISHED;

    /** {@code hdmi-vic} */
    String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
