package rasterfit.edid.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.EdidDecode;

/**
 * EDIDs by chance, read by {@code EdidReader} and by {@code edid-decode}. With {@code -Dproof.edids=5000} as many are made, and
 * only what has no known reason is asserted.
 */
class RandomEdidsOracleTest {
    private static final long SEED = 20_250_317;
    private static final int EDIDS = 400;
    private static final int AT_ONCE = 500;

    @Test
    void everyEdidByChanceReadsAsInTheOracle() {
        int count = Integer.getInteger("proof.edids", EDIDS);
        RandomEdids source = new RandomEdids(SEED);
        Comparison comparison = new Comparison();
        for (int from = 0; from < count; from += AT_ONCE) {
            List<byte[]> edids = source.next(Math.min(AT_ONCE, count - from));
            List<List<String>> printed = EdidDecode.decoded(edids);
            for (int i = 0; i < edids.size(); i++) {
                comparison.add("EDID " + (from + i) + " by chance", edids.get(i), printed.get(i));
            }
        }
        System.out.println(comparison);
        comparison.assertNothingUnexplained();
        assertThat(comparison.edids() + comparison.undecoded()).isEqualTo(count);
        assertThat(comparison.undecoded()).isLessThanOrEqualTo(count / 500);
        if (count == EDIDS) {
            assertThat(comparison.numbers()).isGreaterThan(275_000);
            comparison.assertKnown(reason -> reason.byChance);
        }
    }
}
