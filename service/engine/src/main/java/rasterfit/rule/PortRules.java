package rasterfit.rule;

import java.util.List;

/** What is said about a display whose ports, or menu states, each have an EDID of their own. */
public final class PortRules {
    private static final Rule GRID = rule(
            "edid.ports-disagree-on-grid",
            Severity.WARNING,
            "The preferred timings of all ports have the size of the one panel; where they differ the largest is taken.",
            "E-EDID A2 §3.10.1 for the preferred timing; that the largest is the panel's is an assumption");
    private static final Rule SIZE = rule(
            "edid.ports-disagree-on-size",
            Severity.WARNING,
            "All ports state one image size, within the centimetre to which it may be rounded.",
            "E-EDID A2 table 3.12");
    private static final Rule SERIAL = rule(
            "edid.serial-number-removed",
            Severity.NOTE,
            "What tells one unit from another is set to zero unless it is asked for; nothing here needs it.",
            "E-EDID A2 §3.4.3, §3.10.3.1; DisplayID 1.3, 2.1a");

    static final List<Rule> ALL = List.of(GRID, SIZE, SERIAL);

    private PortRules() {}

    private static Rule rule(String id, Severity severity, String statement, String source) {
        return new Rule(id, Stage.DISPLAY_INPUT, severity, statement, source);
    }

    /** @param taken the port whose grid is taken */
    public static Finding gridsDiffer(
            String port, int columns, int rows, String taken, int takenColumns, int takenRows) {
        return new Finding(
                GRID,
                "Port " + port + " prefers " + columns + " by " + rows + " pixels, port " + taken + " " + takenColumns
                        + " by " + takenRows + "; the latter are taken for the panel.");
    }

    /** @param taken the port whose size is taken */
    public static Finding sizesDiffer(
            String port, int width, int height, String taken, int takenWidth, int takenHeight) {
        return new Finding(
                SIZE,
                "Port " + port + " states an image of " + width + " by " + height + " mm, port " + taken + " "
                        + takenWidth + " by " + takenHeight + " mm; the latter is taken for the panel.");
    }

    public static Finding serialNumberRemoved(String port) {
        return new Finding(SERIAL, "Port " + port + ": the serial numbers of its EDID are set to zero.");
    }
}
