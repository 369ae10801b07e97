package rasterfit.app.gear;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.DisplayBody.DisplayInputBody;
import rasterfit.app.gear.DisplayBody.StateBody;
import rasterfit.app.gear.StateLayers.Written;
import rasterfit.edid.EdidReading;
import rasterfit.gear.Connector;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Plug;
import rasterfit.gear.SinkLimits;
import rasterfit.gear.SinkLimits.ListedRaster;
import rasterfit.gear.SinkLimitsReader;
import rasterfit.quantity.Frequency;

/** Reads what a digital input takes: from its EDID, or as it is typed in. */
final class SinkReader {
    private static final int MOST_TIMINGS = 256;
    private static final List<String> DIGITAL_ONLY = List.of("HDMI", "DISPLAYPORT", "USB_C");

    private final Written<List<String>> timings;
    private final Written<String> maxPixelClock;
    private final Written<String> maxTmdsClock;
    private final Written<LinkKind> link;
    private final Written<Boolean> continuous;

    SinkReader(StateLayers layers) {
        timings = layers.written("timings", DisplayInputBody::timings, StateBody::timings);
        maxPixelClock =
                layers.written("maxPixelClockHz", DisplayInputBody::maxPixelClockHz, StateBody::maxPixelClockHz);
        maxTmdsClock = layers.written("maxTmdsClockHz", DisplayInputBody::maxTmdsClockHz, StateBody::maxTmdsClockHz);
        link = layers.written("link", DisplayInputBody::link, StateBody::link);
        continuous = layers.written("continuous", DisplayInputBody::continuous, StateBody::continuous);
    }

    /** Whether a connector carries digital signals only. */
    static boolean isDigitalOnly(Connector connector) {
        return DIGITAL_ONLY.contains(connector.name());
    }

    /** Whether any member of a digital input is typed in. */
    boolean hasTypedIn() {
        return typedIn().stream().anyMatch(member -> member.value() != null);
    }

    private List<Written<?>> typedIn() {
        return List.of(timings, maxPixelClock, maxTmdsClock, link, continuous);
    }

    /** The EDID stands on its own: what is typed in beside it would contradict or repeat it. */
    SinkLimits fromEdid(EdidReading edid) {
        refuseTypedIn("The EDID says this already; leave one of the two out.");
        return SinkLimitsReader.read(edid);
    }

    void refuseTypedIn(String why) {
        for (Written<?> member : typedIn()) {
            if (member.value() != null) {
                member.at().invalid(why);
            }
        }
    }

    SinkLimits typedIn(
            String inputId,
            @Nullable FrequencyRange lineRate,
            @Nullable FrequencyRange fieldRate,
            @Nullable Plug plug,
            DisplayReader display) {
        List<ListedRaster> listed = new ArrayList<>();
        List<NamedTiming> read = timings.at().each(timings.value(), 0, MOST_TIMINGS, TimingReferences::read);
        timings.at().distinct(read, NamedTiming::label);
        read.forEach(timing ->
                listed.addAll(SinkLimitsReader.listed(timing.label(), timing.variants(), timing.pictureAspect())));
        Frequency pixelClock = maxPixelClock.at().optionalFrequency(maxPixelClock.value(), Range.CLOCK);
        Frequency tmdsClock = maxTmdsClock.at().optionalFrequency(maxTmdsClock.value(), Range.CLOCK);
        if (tmdsClock == null) {
            display.assume("Input " + inputId + ": its greatest TMDS clock is not stated; 165 MHz is assumed.");
        }
        LinkKind kind = link.value();
        if (kind == null) {
            kind = plug != null && plug.connector().name().equals("HDMI") ? LinkKind.HDMI : LinkKind.DVI;
            display.assume("Input " + inputId + ": its kind of link is not stated; " + kind + " is assumed.");
        }
        return new SinkLimits(
                listed,
                fieldRate,
                lineRate,
                pixelClock,
                Boolean.TRUE.equals(continuous.value()),
                tmdsClock == null ? ConverterReader.PLAIN_TMDS_CLOCK : tmdsClock,
                kind);
    }
}
