package rasterfit.upkeep;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Lag read at one input of an owner's own display.
 *
 * @param input id of the input ({@code digital-1})
 * @param state menu state in which it was read; absent: it holds in every state of the input
 * @param on the day of the reading
 */
public record InputReading(String input, @Nullable String state, LocalDate on, LagMeasurement measurement) {}
