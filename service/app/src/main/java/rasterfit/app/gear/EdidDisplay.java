package rasterfit.app.gear;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.EdidReading;
import rasterfit.edid.ScreenSize;
import rasterfit.edid.TimingOrigin;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Fact;
import rasterfit.gear.Level;
import rasterfit.gear.Panel;
import rasterfit.gear.SinkLimitsReader;
import rasterfit.quantity.Rational;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** What is assumed of a display of which little more than an EDID is known. */
final class EdidDisplay {
    /** From here on a display with video timings counts as a television (assumption). */
    private static final int TELEVISION_DIAGONAL_MM = 800;

    /** The widest panels of the trade are 32:9 (common practice); beyond this nothing could be drawn on them. */
    static final int GREATEST_ASPECT = 4;

    private EdidDisplay() {}

    /** Whether a panel can have so many columns and rows. */
    static boolean isSensible(int columns, int rows) {
        return Range.PIXELS.contains(Rational.of(columns))
                && Range.PIXELS.contains(Rational.of(rows))
                && columns <= (long) GREATEST_ASPECT * rows
                && rows <= (long) GREATEST_ASPECT * columns;
    }

    static @Nullable Display read(Place at, String name, String edidBase64) {
        EdidReading edid = EdidText.read(at, edidBase64);
        if (edid == null) {
            return null;
        }
        Panel.Grid panel = panel(edid);
        if (panel == null) {
            at.invalid(
                    "The EDID names no preferred timing that a panel can have, so the size of the panel is not known; describe the display by"
                            + " inputs and panel.");
            return null;
        }
        List<String> assumptions = new ArrayList<>();
        DisplayClass kind = assumedClass(panel, List.of(edid));
        assumptions.add(panelAssumption(panel));
        assumptions.add(classAssumption(kind));
        assumptions.add("Aspect controls are not in an EDID; fill, signalled and one-to-one are assumed.");
        assumptions.add(
                "The connector is not in an EDID; any that carries the input's kind of signal is assumed to fit.");
        return at.make(() -> new Display("display", name, kind, panel, List.of(input(edid)), assumptions));
    }

    private static DisplayInput input(EdidReading edid) {
        var accepts = SinkLimitsReader.accepts(edid);
        boolean isDigital = accepts.get(0).format().isDigital();
        return new DisplayInput(
                "input",
                null,
                null,
                Level.VIDEO_75_OHM,
                accepts,
                isDigital ? null : SinkLimitsReader.analogLineRate(edid),
                isDigital ? null : SinkLimitsReader.analogFieldRate(edid),
                Set.of(Scan.values()),
                Assumptions.HALF_HEIGHT,
                Assumptions.LINE_RATE_RESOLUTION_PPM,
                SinkLimitsReader.read(edid),
                Assumptions.aspectControls(false),
                Fact.unknown(),
                Fact.unknown(),
                List.of(),
                null);
    }

    /** The active size of the preferred timing, interpolating; null if there is none that a panel can have. */
    static Panel.@Nullable Grid panel(EdidReading edid) {
        RasterTiming preferred =
                edid.preferredTiming().map(timing -> timing.timing()).orElse(null);
        if (preferred == null || !isSensible(preferred.horizontalActive(), preferred.verticalActive())) {
            return null;
        }
        ScreenSize.SizeMm size = edid.screen() == null ? null : edid.screen().sizeMm();
        return new Panel.Grid(
                preferred.horizontalActive(),
                preferred.verticalActive(),
                size == null ? null : new Panel.SizeMm(size.width(), size.height()),
                Assumptions.PANEL_FILTER);
    }

    static String panelAssumption(Panel.Grid panel) {
        return "The panel is not described; a grid of " + panel.columns() + " by " + panel.rows()
                + " pixels, the active size of the preferred timing, is assumed, and that it interpolates.";
    }

    /** A tube by its panel; a television by its timings and size, or where no input has an EDID; else a monitor. */
    static DisplayClass assumedClass(Panel panel, List<EdidReading> edids) {
        if (panel instanceof Panel.Tube) {
            return DisplayClass.TUBE;
        }
        boolean isTelevision = edids.isEmpty() || edids.stream().anyMatch(EdidDisplay::isTelevision);
        return isTelevision ? DisplayClass.TELEVISION : DisplayClass.MONITOR;
    }

    private static boolean isTelevision(EdidReading edid) {
        ScreenSize.SizeMm size = edid.screen() == null ? null : edid.screen().sizeMm();
        boolean hasVideoTimings = edid.timings().stream().anyMatch(timing -> timing.origin() == TimingOrigin.VIC);
        return hasVideoTimings
                && size != null
                && (long) size.width() * size.width() + (long) size.height() * size.height()
                        >= (long) TELEVISION_DIAGONAL_MM * TELEVISION_DIAGONAL_MM;
    }

    static String classAssumption(DisplayClass kind) {
        return "The class of the display is not stated; a " + kind.name().toLowerCase(java.util.Locale.ROOT)
                + " is assumed.";
    }
}
