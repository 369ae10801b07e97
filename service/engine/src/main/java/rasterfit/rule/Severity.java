package rasterfit.rule;

/** How much a rule weighs: a remark, something to reckon with, a danger to people or gear, or the end of a candidate. */
public enum Severity {
    NOTE,
    WARNING,
    CAUTION,
    REFUSAL
}
