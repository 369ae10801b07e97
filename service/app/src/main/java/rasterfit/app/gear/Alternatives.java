package rasterfit.app.gear;

/** A value that can be written in several forms, one for each component; the components are no members of their own. */
public interface Alternatives {}
