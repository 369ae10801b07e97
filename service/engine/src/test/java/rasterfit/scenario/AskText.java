package rasterfit.scenario;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;
import rasterfit.match.Limit;
import rasterfit.match.LimitedMeasure;
import rasterfit.quantity.Rational;

/**
 * What is asked for beside the gear: {@code intent X}, {@code weight criterion number}, {@code limit measure <= number [EUR]},
 * {@code owned id ...}. Of {@code accessory X} and {@code sound separate} the engine's request has nothing yet.
 */
final class AskText {
    Intent intent = Intent.EVEN_WEIGHTS;
    final Map<Criterion, Double> weights = new EnumMap<>(Criterion.class);
    final List<Limit> limits = new ArrayList<>();
    final Set<String> owned = new LinkedHashSet<>();
    /** What is asked and cannot be passed on. */
    final Set<String> waiting = new LinkedHashSet<>();

    /** Whether a statement of this kind was read. */
    boolean read(Word kind, Words words) {
        switch (kind.text()) {
            case "intent" -> intent = parsed(words.take(), Intent::valueOf);
            case "weight" -> {
                Word criterion = words.take();
                weights.put(
                        Criterion.byId(criterion.text()).orElseThrow(() -> criterion.fault("no criterion")),
                        parsed(words.take(), Double::valueOf));
            }
            case "limit" -> limits.add(limit(words));
            case "owned" -> {
                while (words.hasNext()) {
                    owned.add(words.take().text());
                }
            }
            case "accessory", "sound" ->
                waiting.add(kind.text() + " " + words.take().text());
            default -> {
                return false;
            }
        }
        return true;
    }

    private static Limit limit(Words words) {
        Word name = words.take();
        LimitedMeasure measure = LimitedMeasure.byId(name.text()).orElseThrow(() -> name.fault("no measure"));
        Word bound = words.take();
        Rational value = parsed(words.take(), measure == LimitedMeasure.ACCEPTANCE ? AskText::grade : Rational::parse);
        String currency = words.hasNext() ? words.take().text() : null;
        return switch (bound.text()) {
            case "<=" -> new Limit(measure, null, Limit.Bound.AT_MOST, value, currency);
            case ">=" -> new Limit(measure, null, Limit.Bound.AT_LEAST, value, currency);
            default -> throw bound.fault("a bound is <= or >=");
        };
    }

    private static Rational grade(String text) {
        return AcceptanceGrade.valueOf(text).rankFromWorst();
    }

    private static <T> T parsed(Word word, Function<String, T> reader) {
        try {
            return reader.apply(word.text());
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(word.fault("cannot be read").getMessage(), e);
        }
    }
}
