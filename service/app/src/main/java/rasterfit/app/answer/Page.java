package rasterfit.app.answer;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A part of a list.
 *
 * @param next what to send as {@code cursor} for the part after it; absent at the end
 */
public record Page<T>(List<T> items, @Nullable String next) {}
