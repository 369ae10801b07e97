package rasterfit.gear;

import java.util.List;
import java.util.regex.Pattern;

/** A connector by its trade name, or {@code own:<slug>} for one that only one maker's gear has. Compared by equality. */
public record Connector(String name) {
    /** Trade names that the gear document may use. */
    public static final List<String> LISTED = List.of(
            "SCART",
            "HDMI",
            "DVI",
            "DISPLAYPORT",
            "VGA",
            "RCA_1",
            "RCA_2",
            "RCA_3",
            "RCA_4",
            "RCA_5",
            "BNC_1",
            "BNC_3",
            "BNC_4",
            "BNC_5",
            "MINI_DIN_4",
            "D_TERMINAL",
            "COAXIAL",
            "USB_C");

    private static final Pattern OWN = Pattern.compile("own:[a-z0-9]+(-[a-z0-9]+)*");

    public Connector {
        if (!isKnown(name)) {
            throw new IllegalArgumentException(
                    "unknown connector " + name + "; use one of " + LISTED + " or own:<slug>");
        }
    }

    /** Whether a name is listed, or of the form {@code own:<slug>}. */
    public static boolean isKnown(String name) {
        return LISTED.contains(name) || OWN.matcher(name).matches();
    }

    @Override
    public String toString() {
        return name;
    }
}
