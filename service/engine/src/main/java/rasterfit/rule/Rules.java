package rasterfit.rule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** All rules, in chain order and then by id: the order in which a refused candidate is counted. */
public final class Rules {
    private static final List<Rule> ALL = inChainOrder();

    private Rules() {}

    public static List<Rule> all() {
        return ALL;
    }

    /** Position in {@link #all}: of two rules that refuse a candidate, the one with the lower position counts. */
    public static int position(Rule rule) {
        int position = ALL.indexOf(rule);
        if (position < 0) {
            throw new IllegalArgumentException("not a listed rule: " + rule.id());
        }
        return position;
    }

    /** The one of two refusals under which a candidate is counted. */
    public static @Nullable Refusal first(@Nullable Refusal a, @Nullable Refusal b) {
        if (a == null || b == null) {
            return a == null ? b : a;
        }
        return position(a.rule()) <= position(b.rule()) ? a : b;
    }

    private static List<Rule> inChainOrder() {
        List<Rule> rules = new ArrayList<>();
        Stream.of(
                        SignalRules.ALL,
                        LinkRules.ALL,
                        InputRules.ALL,
                        ProcessingRules.ALL,
                        LinkClockRules.ALL,
                        OwnerRules.ALL,
                        LimitRules.ALL,
                        FindingRules.ALL,
                        EdidRules.ALL,
                        PortRules.ALL)
                .forEach(rules::addAll);
        rules.sort(Comparator.comparing(Rule::stage).thenComparing(Rule::id));
        return List.copyOf(rules);
    }
}
