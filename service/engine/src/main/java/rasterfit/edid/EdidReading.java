package rasterfit.edid;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What an EDID says. Without a header, or with less than a base block, only {@code defects} has content.
 *
 * @param hasHeader the data begin with the header of a base block
 * @param timings detailed, DisplayID, VIC, HDMI VIC, standard, CVT codes, established; each in the order of the EDID, none twice
 * @param rangeLimits absent where not stated or not credible
 * @param continuousFrequency the display promises every timing inside its limits (EDID 1.4; E-EDID table 3.14)
 * @param defaultGtf the display takes timings made by default GTF inside its limits (EDID up to 1.3, the same bit)
 */
public record EdidReading(
        boolean hasHeader,
        @Nullable ProductIdentity product,
        @Nullable VideoInput input,
        List<AcceptedTiming> timings,
        @Nullable RangeLimits rangeLimits,
        boolean continuousFrequency,
        boolean defaultGtf,
        @Nullable ScreenSize screen,
        List<EdidDefect> defects) {

    public EdidReading {
        timings = List.copyOf(timings);
        defects = List.copyOf(defects);
    }

    static EdidReading unreadable(boolean hasHeader, List<EdidDefect> defects) {
        return new EdidReading(hasHeader, null, null, List.of(), null, false, false, null, defects);
    }

    public Optional<AcceptedTiming> preferredTiming() {
        return timings.stream().filter(AcceptedTiming::preferred).findFirst();
    }

    public Optional<AcceptedTiming> findTiming(String label) {
        return timings.stream().filter(timing -> timing.label().equals(label)).findFirst();
    }
}
