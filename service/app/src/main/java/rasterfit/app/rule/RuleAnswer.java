package rasterfit.app.rule;

import rasterfit.rule.Rule;
import rasterfit.rule.Severity;
import rasterfit.rule.Stage;

/**
 * A rule.
 *
 * @param id {@code area.what-is-wrong}, stable
 * @param severity what follows when it is broken
 * @param source document and clause, {@code common practice}, or {@code assumption}
 */
record RuleAnswer(String id, Stage stage, Severity severity, String statement, String source) {
    static RuleAnswer of(Rule rule) {
        return new RuleAnswer(rule.id(), rule.stage(), rule.severity(), rule.statement(), rule.source());
    }
}
