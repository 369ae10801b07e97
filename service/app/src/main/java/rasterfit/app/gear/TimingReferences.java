package rasterfit.app.gear;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rasterfit.timing.Cta861;
import rasterfit.timing.Dmt;

/** Timings named by their standard and number: {@code vic:16} of CTA-861, {@code dmt:0x52} of VESA DMT. */
final class TimingReferences {
    private static final Pattern REFERENCE = Pattern.compile("([a-z][a-z0-9-]{0,19}):([0-9a-z.@-]{1,40})");
    private static final Pattern VIC = Pattern.compile("[0-9]{1,3}");
    private static final Pattern DMT = Pattern.compile("0x[0-9a-f]{2}");

    private TimingReferences() {}

    /** Null, and a fault at the place, if the reference names nothing known. */
    static @Nullable NamedTiming read(Place at, String reference) {
        Matcher parts = REFERENCE.matcher(reference);
        if (!parts.matches()) {
            at.wrongForm("A timing is named by its standard and number, such as vic:16 or dmt:0x52.");
            return null;
        }
        String number = parts.group(2);
        switch (parts.group(1)) {
            case "vic":
                return known(at, "CTA-861", number, videoTiming(number));
            case "dmt":
                return known(at, "VESA DMT", number, monitorTiming(number));
            default:
                at.invalid("Timings of \"" + parts.group(1)
                        + "\" are not known; name one of CTA-861, such as vic:16, or of VESA DMT, such as dmt:0x52.");
                return null;
        }
    }

    private static @Nullable NamedTiming known(Place at, String standard, String number, @Nullable NamedTiming timing) {
        if (timing == null) {
            at.invalid(standard + " has no timing with the number " + number + ".");
        }
        return timing;
    }

    private static @Nullable NamedTiming videoTiming(String number) {
        if (!VIC.matcher(number).matches()) {
            return null;
        }
        return Cta861.find(Integer.parseInt(number))
                .map(found -> new NamedTiming("vic:" + found.vic(), found.variants(), found.pictureAspect()))
                .orElse(null);
    }

    private static @Nullable NamedTiming monitorTiming(String number) {
        if (!DMT.matcher(number).matches()) {
            return null;
        }
        return Dmt.find(Integer.decode(number))
                .map(found -> new NamedTiming("dmt:" + number, List.of(found.timing()), null))
                .orElse(null);
    }
}
