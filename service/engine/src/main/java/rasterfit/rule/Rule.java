package rasterfit.rule;

/**
 * A statement about chains, with a stable id of the form {@code area.what-is-wrong}.
 *
 * @param stage where in the chain it is asked
 * @param source the document and clause, {@code common practice}, or {@code assumption}
 */
public record Rule(String id, Stage stage, Severity severity, String statement, String source) {}
