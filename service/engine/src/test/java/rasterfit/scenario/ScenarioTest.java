package rasterfit.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import rasterfit.gear.Catalogue;
import rasterfit.match.Matcher;
import rasterfit.match.WorkLimit;
import rasterfit.rule.Rule;
import rasterfit.rule.Rules;

/**
 * The engine answers every scenario as the trade does, except for those that {@code not-yet.txt} lists: these have to fail, so
 * that the list shrinks with what the engine learns.
 */
class ScenarioTest {
    private static final List<Scenario> SCENARIOS = ScenarioFiles.all();
    private static final List<String> NOT_YET = ScenarioFiles.listed("not-yet.txt");

    @TestFactory
    Stream<DynamicTest> theEngineAnswersAsTheTradeDoes() {
        return SCENARIOS.stream().map(scenario -> dynamicTest(scenario.toString(), () -> run(scenario)));
    }

    private static void run(Scenario scenario) {
        if (!NOT_YET.contains(scenario.number())) {
            check(scenario);
            return;
        }
        // Only an answer that differs is a reason to wait; an error is none.
        AssertionError differs = catchThrowableOfType(AssertionError.class, () -> check(scenario));
        assertThat(differs)
                .as("%s %s passes now: take it off not-yet.txt", scenario.place(), scenario)
                .isNotNull();
    }

    private static void check(Scenario scenario) {
        assertThat(scenario.waiting())
                .as("%s states what the engine has no place for", scenario.place())
                .isEmpty();
        scenario.expectation().check(new Matcher(WorkLimit.DEFAULT).match(scenario.request(), Catalogue.EMPTY));
    }

    @Test
    void aHundredScenariosAndMoreAndFortyOfThemRefusalsOrHazards() {
        assertThat(SCENARIOS).hasSizeGreaterThanOrEqualTo(100);
        assertThat(SCENARIOS.stream().filter(one -> one.expectation().isRefusalOrHazard()))
                .hasSizeGreaterThanOrEqualTo(Math.max(40, SCENARIOS.size() / 3));
    }

    @Test
    void everyNumberStandsForOneScenarioAndTheListNamesNoOther() {
        List<String> numbers = SCENARIOS.stream().map(Scenario::number).toList();
        assertThat(numbers).doesNotHaveDuplicates();
        assertThat(NOT_YET).doesNotHaveDuplicates().isSubsetOf(numbers);
    }

    @Test
    void everyRuleThatIsNamedExistsOrIsProposed() {
        Set<String> known = Rules.all().stream().map(Rule::id).collect(Collectors.toCollection(HashSet::new));
        List<String> proposed = ScenarioFiles.listed("proposed-rules.txt");
        assertThat(proposed).as("a rule that exists is proposed no longer").doesNotContainAnyElementsOf(known);
        Set<String> named = SCENARIOS.stream()
                .flatMap(one -> one.expectation().rule().stream())
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(named).containsAll(proposed);
        known.addAll(proposed);
        assertThat(known).containsAll(named);
    }

    @Test
    void everyChainThatIsExpectedIsMadeOfTheGearOfItsScenario() {
        assertThat(SCENARIOS)
                .allSatisfy(one -> assertThat(one.possibleSteps())
                        .as("%s", one.place())
                        .containsAll(one.expectation().steps()));
    }
}
