package rasterfit.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rasterfit.EdidDecode;
import rasterfit.quantity.Rational;

/** Every numbered timing of DMT, CTA-861-I and HDMI against those that Debian's {@code edid-decode} carries. */
class PublishedTimingsOracleTest {
    /** Two rows of the tool are known to be wrong; the project's reference tables correct them against DMT 1.13. */
    private static final Map<Integer, Set<String>> KNOWN_ERRORS_IN_DMT = Map.of(
            0x43, Set.of("vertical back porch", "vertical total"),
            0x4B, Set.of("vertical front porch", "vertical sync", "vertical total"));

    @Test
    void everyMonitorTimingIsThatOfTheOracle() {
        List<PrintedTiming> printed = printed(
                "--dmt",
                Dmt.all().stream().map(timing -> Integer.toString(timing.id())).toList());
        Map<Integer, Set<String>> differing = new LinkedHashMap<>();
        for (int i = 0; i < printed.size(); i++) {
            Dmt.MonitorTiming ours = Dmt.all().get(i);
            assertSameSize(ours.timing(), printed.get(i));
            Set<String> members = printed.get(i).differingFrom(ours.timing(), ours.border(), Rational.ZERO);
            if (!members.isEmpty()) {
                differing.put(ours.id(), members);
            }
        }
        assertThat(differing).isEqualTo(KNOWN_ERRORS_IN_DMT);
    }

    @Test
    void everyVideoTimingIsThatOfTheOracle() {
        List<PrintedTiming> printed = printed(
                "--vic",
                Cta861.all().stream()
                        .map(timing -> Integer.toString(timing.vic()))
                        .toList());
        for (int i = 0; i < printed.size(); i++) {
            VideoTiming ours = Cta861.all().get(i);
            assertSameSize(ours.timing(), printed.get(i));
            assertThat(printed.get(i).differingFrom(ours.timing(), Border.NONE, Rational.ZERO))
                    .as("VIC %d", ours.vic())
                    .isEmpty();
        }
    }

    @Test
    void everyHdmiVideoTimingIsThatOfTheOracle() {
        List<PrintedTiming> printed = printed("--hdmi-vic", List.of("1", "2", "3", "4"));
        for (int i = 0; i < printed.size(); i++) {
            RasterTiming ours = HdmiVideo.find(i + 1).orElseThrow().timing();
            assertSameSize(ours, printed.get(i));
            assertThat(printed.get(i).differingFrom(ours, Border.NONE, Rational.ZERO))
                    .isEmpty();
        }
    }

    private static List<PrintedTiming> printed(String option, List<String> numbers) {
        List<String> options = new ArrayList<>();
        numbers.forEach(number -> options.addAll(List.of(option, number)));
        List<PrintedTiming> printed = PrintedTiming.read(EdidDecode.lines(options));
        assertThat(printed).hasSameSizeAs(numbers);
        return printed;
    }

    private static void assertSameSize(RasterTiming ours, PrintedTiming theirs) {
        assertThat(theirs.horizontalActive()).isEqualTo(ours.horizontalActive());
        assertThat(theirs.verticalActive()).isEqualTo(ours.verticalActive());
    }
}
