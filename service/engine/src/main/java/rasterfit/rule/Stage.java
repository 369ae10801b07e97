package rasterfit.rule;

/** The part of a chain to which a rule or a step belongs, in chain order. */
public enum Stage {
    SOURCE_OUTPUT,
    CABLE,
    ADAPTER,
    SWITCH,
    CONVERTER,
    DISPLAY_INPUT,
    /** The whole chain: limits of the request. */
    SETUP
}
