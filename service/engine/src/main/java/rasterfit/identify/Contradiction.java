package rasterfit.identify;

import java.util.List;

/**
 * Measured values that cannot all be true of one timing, whatever the timing is.
 *
 * @param members the values, by the names of their members; parts of the counted picture as {@code active/dots}
 * @param message both sides with their numbers
 */
public record Contradiction(List<String> members, String message) {
    public Contradiction {
        members = List.copyOf(members);
    }
}
