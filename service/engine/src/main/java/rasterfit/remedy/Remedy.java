package rasterfit.remedy;

import java.util.List;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.Price;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.quantity.Rational;
import rasterfit.rule.Finding;
import rasterfit.rule.Severity;

/**
 * A change with the setup that a run of the matcher ranked on the changed request.
 *
 * @param setup the best one that the change leads to
 */
public record Remedy(Change change, RankedSetup setup) {
    public double resultingScore() {
        return setup.score();
    }

    public Price price() {
        return setup.price();
    }

    public List<RouteStep> route() {
        return setup.route();
    }

    /** The greatest over all modes. */
    public Rational addedLatencyMs() {
        Rational greatest = Rational.ZERO;
        for (ModeSetting setting : setup.modeSettings()) {
            greatest = greatest.max(setting.measures().addedLatencyMs().greatest());
        }
        return greatest;
    }

    /** Dangers to people or gear that come with it. */
    public List<Finding> cautions() {
        return setup.findings().stream()
                .filter(finding -> finding.rule().severity() == Severity.CAUTION)
                .toList();
    }
}
