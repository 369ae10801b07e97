package rasterfit.app.gear;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rasterfit.timing.Cta861;
import rasterfit.timing.VideoTiming;

/** Timings named by their standard and number: {@code vic:16} of CTA-861. Other standards are not known yet. */
final class TimingReferences {
    private static final Pattern REFERENCE = Pattern.compile("([a-z][a-z0-9-]{0,19}):([0-9a-z.@-]{1,40})");
    private static final Pattern VIC = Pattern.compile("[0-9]{1,3}");

    private TimingReferences() {}

    /** Null, and a fault at the place, if the reference names nothing known. */
    static @Nullable VideoTiming read(Place at, String reference) {
        Matcher parts = REFERENCE.matcher(reference);
        if (!parts.matches()) {
            at.wrongForm("A timing is named by its standard and number, such as vic:16.");
            return null;
        }
        if (!parts.group(1).equals("vic")) {
            at.invalid("Timings of \"" + parts.group(1) + "\" are not known yet; name one of CTA-861, such as vic:16.");
            return null;
        }
        Optional<VideoTiming> timing = VIC.matcher(parts.group(2)).matches()
                ? Cta861.find(Integer.parseInt(parts.group(2)))
                : Optional.empty();
        if (timing.isEmpty()) {
            at.invalid("CTA-861 has no timing with the number " + parts.group(2) + ".");
        }
        return timing.orElse(null);
    }

    static String label(VideoTiming timing) {
        return "vic:" + timing.vic();
    }
}
