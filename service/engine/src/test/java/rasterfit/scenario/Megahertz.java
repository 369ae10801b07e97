package rasterfit.scenario;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Fact;
import rasterfit.gear.FrequencyRange;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** Clocks and bandwidths are written in MHz, ranges of line and field rates in Hz. */
final class Megahertz {
    private static final long HZ = 1_000_000;

    private Megahertz() {}

    static Fact fact(Facts facts, String name, String otherwise) {
        return Fact.known(facts.number(name, otherwise).times(HZ));
    }

    static Frequency frequency(Facts facts, String name, String otherwise) {
        return new Frequency(facts.number(name, otherwise).times(HZ));
    }

    /** @param otherwise absent: any */
    static @Nullable FrequencyRange range(Facts facts, String name, @Nullable String otherwise) {
        String text = facts.text(name);
        if (text == null && otherwise == null) {
            return null;
        }
        List<String> ends = facts.ends(name, text == null ? otherwise : text);
        return facts.parsed(
                name, String.join("-", ends), range -> new FrequencyRange(hz(ends.get(0)), hz(ends.get(1))));
    }

    private static Frequency hz(String text) {
        return new Frequency(Rational.parse(text));
    }
}
