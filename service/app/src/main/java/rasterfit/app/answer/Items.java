package rasterfit.app.answer;

import java.util.List;

/** A list as an answer: an object at top level, so that more can be said beside it. */
public record Items<T>(List<T> items) {}
