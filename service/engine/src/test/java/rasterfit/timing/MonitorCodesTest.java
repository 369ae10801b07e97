package rasterfit.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The codes of DMT timings against the formulas by which an EDID encodes them (E-EDID A2 §3.9 and §3.10.3.8). */
class MonitorCodesTest {
    /** Published otherwise than the formula says; the values are those of DMT 1.13 as {@code edid-decode} lists them. */
    private static final Map<Integer, Integer> PUBLISHED_STANDARD_CODES = Map.of(0x11, 0x614C);

    private static final Map<Integer, Integer> PUBLISHED_CVT_CODES = Map.of(0x31, 0xC11868, 0x3C, 0x0C2868);

    @Test
    void everyStandardCodeTellsSizeAspectAndRate() {
        List<Dmt.MonitorTiming> coded = Dmt.all().stream()
                .filter(timing -> timing.standardCode() != null)
                .toList();
        assertThat(coded).hasSize(49);
        for (Dmt.MonitorTiming each : coded) {
            // 640 × 480 at 72.8 Hz is DMT's "72 Hz".
            int rate = each.id() == 0x05 ? 72 : nominalRate(each);
            int formula = (each.timing().horizontalActive() / 8 - 31) << 8 | standardAspect(each) << 6 | rate - 60;
            assertThat(each.standardCode())
                    .as("0x%02x", each.id())
                    .isEqualTo(PUBLISHED_STANDARD_CODES.getOrDefault(each.id(), formula));
        }
    }

    @Test
    void everyCvtCodeTellsLinesAspectAndRate() {
        List<Dmt.MonitorTiming> coded =
                Dmt.all().stream().filter(timing -> timing.cvtCode() != null).toList();
        assertThat(coded).hasSize(28);
        for (Dmt.MonitorTiming each : coded) {
            int lines = each.timing().verticalActive() / 2 - 1;
            int rateIndex = List.of(50, 60, 75, 85).indexOf(nominalRate(each));
            int supported = each.reducedBlanking() ? 1 : 0x10 >> rateIndex;
            int formula =
                    (lines & 0xFF) << 16 | (lines >> 8) << 12 | cvtAspect(each) << 10 | rateIndex << 5 | supported;
            assertThat(each.cvtCode())
                    .as("0x%02x", each.id())
                    .isEqualTo(PUBLISHED_CVT_CODES.getOrDefault(each.id(), formula));
        }
    }

    @Test
    void aStandardCodeFindsItsTiming() {
        assertThat(Dmt.findByStandardCode(0x8180).map(Dmt.MonitorTiming::id)).hasValue(0x23);
        assertThat(Dmt.findByStandardCode(0xD1C0).map(Dmt.MonitorTiming::id)).hasValue(0x52);
        assertThat(Dmt.findByStandardCode(0x0101)).isEmpty();
    }

    @Test
    void numbersRunFrom1To58InHexadecimal() {
        assertThat(Dmt.all().stream().map(Dmt.MonitorTiming::id))
                .containsExactlyElementsOf(
                        IntStream.rangeClosed(0x01, 0x58).boxed().toList());
        assertThat(Dmt.find(0x00)).isEmpty();
        assertThat(Dmt.find(0x59)).isEmpty();
    }

    /** To the next of the rates that DMT names; 84.9 Hz is 85 Hz, 59.8 Hz is 60 Hz. */
    private static int nominalRate(Dmt.MonitorTiming timing) {
        return (int) timing.timing().fieldRate().hz().round();
    }

    private static int standardAspect(Dmt.MonitorTiming timing) {
        return index(timing, List.of("8/5", "4/3", "5/4", "16/9"));
    }

    private static int cvtAspect(Dmt.MonitorTiming timing) {
        return index(timing, List.of("4/3", "16/9", "8/5", "5/3"));
    }

    private static int index(Dmt.MonitorTiming timing, List<@Nullable String> aspects) {
        return aspects.indexOf(timing.pictureAspect().toString());
    }
}
