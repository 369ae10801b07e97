package rasterfit.scenario;

import java.util.List;

/**
 * A mode or a way of processing.
 *
 * @param what {@code mode}, {@code pass}, {@code repeat} or {@code scale}
 * @param arguments the words between that and the facts
 */
record ClauseText(Word what, List<Word> arguments, Facts facts) {}
