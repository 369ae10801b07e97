package rasterfit.app.match;

import java.util.List;
import rasterfit.gear.Display;
import rasterfit.rule.Finding;

/**
 * The display that a request means.
 *
 * @param findings what is to be said of how it was found
 */
record ChosenDisplay(Display display, boolean owned, List<Finding> findings) {
    ChosenDisplay {
        findings = List.copyOf(findings);
    }
}
