package rasterfit.app.match;

import java.util.List;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.rule.Finding;

/**
 * The display that a request means.
 *
 * @param findings what is to be said of how it was found
 * @param others its inputs and menu states that the request leaves out
 */
record ChosenDisplay(Display display, boolean owned, List<Finding> findings, List<DisplayInput> others) {
    ChosenDisplay {
        findings = List.copyOf(findings);
        others = List.copyOf(others);
    }

    /** With all its inputs. */
    ChosenDisplay(Display display, boolean owned, List<Finding> findings) {
        this(display, owned, findings, List.of());
    }
}
