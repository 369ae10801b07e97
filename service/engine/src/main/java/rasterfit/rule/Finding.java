package rasterfit.rule;

/** What should be known about a setup that works. */
public record Finding(Rule rule, String message) {}
