package rasterfit.match.worked;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rasterfit.Fractions.printed;

import java.util.Arrays;
import java.util.List;
import rasterfit.gear.Basis;
import rasterfit.match.Criterion;
import rasterfit.match.Latency;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.CriterionValue;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.match.Measures;
import rasterfit.quantity.Rational;

/** Asks an answer for figures that were worked out before. */
final class Answers {
    private static final double DIGITS = 1e-9;

    private Answers() {}

    /**
     * A criterion as it was worked out.
     *
     * @param value NaN where the criterion has no single number
     * @param weight as asked, before it is divided by the sum of all
     */
    record Told(Criterion criterion, double value, double utility, double weight) {}

    static Told told(Criterion criterion, double value, double utility, double weight) {
        return new Told(criterion, value, utility, weight);
    }

    /** All criteria, in their order, their weights as shares of the sum, and the score that they add up to. */
    static void criteria(RankedSetup setup, double score, Told... expected) {
        assertThat(setup.criteria())
                .extracting(CriterionValue::criterion)
                .containsExactlyElementsOf(
                        Arrays.stream(expected).map(Told::criterion).toList());
        double sum = Arrays.stream(expected).mapToDouble(Told::weight).sum();
        double total = 0;
        for (int i = 0; i < expected.length; i++) {
            CriterionValue actual = setup.criteria().get(i);
            String id = actual.criterion().id();
            if (Double.isNaN(expected[i].value())) {
                assertThat(actual.value()).as(id).isNull();
            } else {
                assertThat(actual.value()).as(id).isNotNull();
                assertThat(actual.value().toDouble()).as(id).isCloseTo(expected[i].value(), within(1e-6));
            }
            assertThat(actual.utility()).as(id + " utility").isCloseTo(expected[i].utility(), within(DIGITS));
            assertThat(actual.weight()).as(id + " weight").isCloseTo(expected[i].weight() / sum, within(DIGITS));
            total += expected[i].weight() / sum * expected[i].utility();
        }
        assertThat(total).as("the score worked out").isCloseTo(score, within(DIGITS));
        assertThat(setup.score()).isCloseTo(score, within(DIGITS));
    }

    /** Milliseconds to six decimals, in the order top, middle, bottom, least, typical, greatest. */
    static void latency(Latency actual, Basis basis, String... expected) {
        assertThat(List.of(
                        printed(actual.top(), 6),
                        printed(actual.middle(), 6),
                        printed(actual.bottom(), 6),
                        printed(actual.least(), 6),
                        printed(actual.typical(), 6),
                        printed(actual.greatest(), 6)))
                .containsExactly(expected);
        assertThat(actual.basis()).isEqualTo(basis);
    }

    /** The same at every line. */
    static void flatLatency(Latency actual, Basis basis, String least, String typical, String greatest) {
        latency(actual, basis, typical, typical, typical, least, typical, greatest);
    }

    /** Against a listed raster of equal totals: one percentage for all three rates. */
    static void sameCountsAs(Measures.Acceptance acceptance, String against, Rational percent) {
        assertThat(acceptance.deviations())
                .isEqualTo(new Measures.Deviations(against, Rational.ZERO, Rational.ZERO, percent, percent, percent));
        assertThat(acceptance.listedAs()).isEqualTo(against);
    }

    /** Counts: one open route, so many settings of which so many are refused. */
    static void counts(MatchResult result, int settings, int refused) {
        assertThat(result.counts()).isEqualTo(new MatchResult.Counts(1, 0, settings, refused));
        assertThat(result.refused().stream().mapToLong(RefusalGroup::count).sum())
                .isEqualTo(refused);
    }

    /** Rules that refused settings, in chain order, each with its count, nearest miss and limit. */
    static void refused(MatchResult result, String... expected) {
        assertThat(result.refused())
                .extracting(group -> group.rule().id() + " × " + group.count()
                        + (group.nearest() == null
                                ? ""
                                : ": " + group.nearest().value() + " against "
                                        + group.nearest().limit()))
                .containsExactly(expected);
    }

    static void findings(RankedSetup setup, String... ids) {
        assertThat(setup.findings()).extracting(finding -> finding.rule().id()).containsExactlyInAnyOrder(ids);
    }

    static void price(RankedSetup setup, String amount, String least, String greatest) {
        assertThat(setup.price().amount()).isEqualByComparingTo(amount);
        assertThat(setup.price().least()).isEqualByComparingTo(least);
        assertThat(setup.price().greatest()).isEqualByComparingTo(greatest);
        assertThat(setup.price().currency()).isEqualTo("EUR");
        assertThat(setup.price().unpriced()).isEmpty();
    }

    static void route(RankedSetup setup, String... ids) {
        assertThat(setup.route()).extracting(MatchResult.RouteStep::id).containsExactly(ids);
    }

    /** 2^(−typical/16.7 ms). */
    static double halfPerFrame(double ms) {
        return Math.pow(2, -ms / 16.7);
    }
}
