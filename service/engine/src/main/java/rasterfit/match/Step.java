package rasterfit.match;

import java.util.Map;

/**
 * One computed step of an explanation.
 *
 * @param mode the mode for which it was computed
 * @param inputs by name, in the order of the formula, with their units
 * @param formula in plain notation
 * @param source document and clause, {@code common practice} or {@code assumption}
 * @param result with its unit
 */
public record Step(
        String mode, String name, Map<String, String> inputs, String formula, String source, String result) {}
