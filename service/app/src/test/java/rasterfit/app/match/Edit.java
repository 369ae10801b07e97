package rasterfit.app.match;

import com.code_intelligence.jazzer.mutation.annotation.InRange;
import com.code_intelligence.jazzer.mutation.annotation.NotNull;
import com.code_intelligence.jazzer.mutation.annotation.WithUtf8Length;

/**
 * A change to one value of a request.
 *
 * @param place which value, counted depth first and wrapping round
 * @param choice which of the values that may stand there, wrapping round; also a denominator
 * @param scale decimals of {@code number}
 */
record Edit(
        int place,
        @NotNull Change change,
        int choice,
        long number,
        @InRange(min = -20, max = 20) int scale,
        @NotNull @WithUtf8Length(max = 40) String text) {

    /** What an edit does with its value. */
    enum Change {
        REMOVE,
        /** Takes the text as it is. */
        TEXT,
        /** Takes the number as a JSON number. */
        NUMBER,
        /** Takes the number, or a fraction with it above the line, as a text. */
        EXACT,
        /** Takes what stands under a member of the same name somewhere else. */
        BORROW,
        /** Gives an object a member that one under the same name has somewhere else. */
        ADD,
        /** Puts an element into its list once more. */
        REPEAT
    }
}
