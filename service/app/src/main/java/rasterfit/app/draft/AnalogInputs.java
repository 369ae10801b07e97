package rasterfit.app.draft;

import java.util.List;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.SyncKind;
import rasterfit.timing.Scan;

/** What is the same for every analog input, of a converter or a display. */
final class AnalogInputs {
    private static final String SYNCS = "Where such inputs find the sync of this signal; common practice.";

    private AnalogInputs() {}

    /** Formats with the syncs that usually go with them. */
    static void accept(Part input, Answer formats) {
        accept(input, formats, formats.texts());
    }

    static void accept(Part input, Answer answer, List<String> formats) {
        for (String format : formats) {
            Part accepted = input.element("accepts");
            accepted.answer("format", answer, format);
            List<SyncKind> syncs = syncs(Format.valueOf(format));
            if (!syncs.isEmpty()) {
                accepted.assume("syncs", syncs, SYNCS);
            }
        }
    }

    /** Composite video and Y/C carry their sync in the one way that they have. */
    private static List<SyncKind> syncs(Format format) {
        return switch (format) {
            case RGB -> List.of(SyncKind.SYNC_ON_COMPOSITE, SyncKind.COMPOSITE_SYNC);
            case YPBPR -> List.of(SyncKind.SYNC_ON_LUMA);
            case RF, CVBS, YC, TMDS -> List.of();
        };
    }

    /** Line and field rates near the two broadcast families. */
    static void standardDefinition(Part input, String reason) {
        Part line = input.object("lineRateHz");
        line.assume("min", "15000", reason);
        line.assume("max", "16500", reason);
        Part field = input.object("fieldRateHz");
        field.assume("min", "47", reason);
        field.assume("max", "63", reason);
    }

    /** What the engine takes where nothing is written. */
    static void leaveRest(Part input) {
        input.leave("level", Level.VIDEO_75_OHM, "Inputs for video take sync at video level.");
        input.leave("scans", List.of(Scan.values()), "Nothing says that a scan is refused.");
        input.leave("halfHeightProgressive", Assumptions.HALF_HEIGHT, "What becomes of 240 or 288 lines is not known.");
        input.leave(
                "lineRateResolutionPpm",
                Assumptions.LINE_RATE_RESOLUTION_PPM.toSixDigits(),
                "How near two line rates can lie and still be told apart is not known.");
    }
}
