package rasterfit.gear;

import java.util.List;

/**
 * A display with its inputs, one entry per menu state.
 *
 * @param assumptions what had to be assumed of it, in words; each becomes a finding
 */
public record Display(
        String id,
        String name,
        DisplayClass displayClass,
        Panel panel,
        List<DisplayInput> inputs,
        List<String> assumptions) {

    public Display {
        inputs = List.copyOf(inputs);
        assumptions = List.copyOf(assumptions);
        if (inputs.isEmpty()) {
            throw new IllegalArgumentException("a display needs at least one input");
        }
    }

    /** The same display with other inputs. */
    public Display with(List<DisplayInput> others) {
        return new Display(id, name, displayClass, panel, others, assumptions);
    }

    /** The same display under another id. */
    public Display withId(String other) {
        return new Display(other, name, displayClass, panel, inputs, assumptions);
    }
}
