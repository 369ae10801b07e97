package rasterfit.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.rule.Finding;
import rasterfit.rule.Rule;
import rasterfit.rule.Rules;
import rasterfit.rule.Severity;
import rasterfit.rule.Stage;

/** The one line that says what the trade expects. */
sealed interface Expectation {
    /**
     * Holds it against an answer.
     *
     * @throws AssertionError if the answer is another
     */
    void check(MatchResult result);

    /** The rule that it names, if any. */
    default Optional<String> rule() {
        return Optional.empty();
    }

    /** The steps of the chain that it names; empty if it names none. */
    default List<String> steps() {
        return List.of();
    }

    /** Whether it is about something that does not work or may do harm. */
    default boolean isRefusalOrHazard() {
        return false;
    }

    /** {@code best: console:port > link > converter:port → port > display:port}: the chain ranked first. */
    record Best(String chain) implements Expectation {
        @Override
        public void check(MatchResult result) {
            RankedSetup best = first(result);
            assertThat(chainOf(best)).isEqualTo(chain);
            // Not by the tie-break.
            assertThat(result.ranked().stream().skip(1))
                    .allSatisfy(other ->
                            assertThat(other.score()).as(chainOf(other)).isLessThan(best.score()));
        }

        @Override
        public List<String> steps() {
            return List.of(chain.split(" > ", -1));
        }
    }

    /** {@code refused: rule at STAGE}: nothing is left, and this is one of the reasons. */
    record Refused(String id, Stage stage) implements Expectation {
        @Override
        public void check(MatchResult result) {
            assertThat(result.ranked().stream().map(Expectation::chainOf)).isEmpty();
            List<String> reasons = result.refused().stream()
                    .map(group -> group.rule().id() + " at " + group.rule().stage())
                    .toList();
            assertThat(reasons).contains(id + " at " + stage);
        }

        @Override
        public Optional<String> rule() {
            return Optional.of(id);
        }

        @Override
        public boolean isRefusalOrHazard() {
            return true;
        }
    }

    /** {@code finding: rule}: told of the chain ranked first; {@code caution: rule}: told as a danger. */
    record Told(String id, boolean asCaution) implements Expectation {
        @Override
        public void check(MatchResult result) {
            List<Rule> told =
                    first(result).findings().stream().map(Finding::rule).toList();
            assertThat(told.stream().map(Rule::id)).contains(id);
            if (asCaution) {
                assertThat(told.stream().filter(rule -> rule.id().equals(id)).map(Rule::severity))
                        .containsOnly(Severity.CAUTION);
            }
        }

        @Override
        public Optional<String> rule() {
            return Optional.of(id);
        }

        @Override
        public boolean isRefusalOrHazard() {
            return asCaution;
        }
    }

    /** {@code without: rule}: the rule exists, and the chain ranked first gives no cause for it. */
    record Without(String id) implements Expectation {
        @Override
        public void check(MatchResult result) {
            assertThat(Rules.all().stream().map(Rule::id)).as("rules").contains(id);
            assertThat(first(result).findings().stream()
                            .map(finding -> finding.rule().id()))
                    .doesNotContain(id);
        }

        @Override
        public Optional<String> rule() {
            return Optional.of(id);
        }
    }

    static Expectation read(String line, Place place) {
        String[] parts = line.split(":", 2);
        String what = parts.length == 2 ? parts[1].trim() : "";
        return switch (parts[0]) {
            case "best" -> new Best(what);
            case "refused" -> refused(what, place);
            case "finding" -> new Told(what, false);
            case "caution" -> new Told(what, true);
            case "without" -> new Without(what);
            default -> throw place.fault("an expectation is one of best, refused, finding, caution, without");
        };
    }

    /** Whether a line is meant as an expectation. */
    static boolean isOne(String line) {
        return line.matches("[a-z]+: .*");
    }

    private static Refused refused(String what, Place place) {
        String[] parts = what.split(" at ", 2);
        for (Stage stage : Stage.values()) {
            if (parts.length == 2 && stage.name().equals(parts[1])) {
                return new Refused(parts[0], stage);
            }
        }
        throw place.fault("a refusal is written as rule at STAGE");
    }

    private static RankedSetup first(MatchResult result) {
        assertThat(result.ranked())
                .as("nothing ranked, since %s", result.refused())
                .isNotEmpty();
        return result.ranked().get(0);
    }

    private static String chainOf(RankedSetup setup) {
        return String.join(" > ", setup.route().stream().map(Expectation::told).toList());
    }

    private static String told(RouteStep step) {
        String port = step.port() == null ? "" : ":" + step.port();
        String state = step.state() == null ? "" : "/" + step.state();
        return (step.stage() == Stage.SOURCE_OUTPUT ? step.name() : step.id()) + port + state;
    }
}
