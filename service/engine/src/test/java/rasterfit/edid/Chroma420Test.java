package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Timings in YCbCr 4:2:0: CTA-861-I §7.5.10 (extended tag 14) and §7.5.11 (extended tag 15). */
class Chroma420Test {
    @Test
    void theVideoDataBlockListsWhatIsTakenIn420Alone() {
        List<AcceptedTiming> timings = read(new CtaBuilder().video(16).dataBlock(7, 14, 96, 97));
        assertThat(timings).extracting(AcceptedTiming::label).containsExactly("vic:16", "vic:96", "vic:97");
        assertThat(timings)
                .extracting(AcceptedTiming::chroma420)
                .containsExactly(Chroma420.NOT_LISTED, Chroma420.ONLY, Chroma420.ONLY);
    }

    @Test
    void theCapabilityMapHasABitForEachShortVideoDescriptorFromBit0On() {
        // 05h 02h: the first, third and tenth descriptor.
        List<AcceptedTiming> timings =
                read(new CtaBuilder().video(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11).dataBlock(7, 15, 0x05, 0x02));
        assertThat(timings.stream()
                        .filter(timing -> timing.chroma420() == Chroma420.ALSO)
                        .map(AcceptedTiming::number))
                .containsExactly(1, 3, 10);
        assertThat(timings).noneMatch(timing -> timing.chroma420() == Chroma420.ONLY);
    }

    @Test
    void theMapCountsThroughAllVideoDataBlocksAndReservedDescriptors() {
        // Places: 16, reserved 0, 97 | 96, 95: bits 2 and 3.
        List<AcceptedTiming> timings = read(
                new CtaBuilder().dataBlock(7, 15, 0x0C).videoBytes(16, 0, 97).video(96, 95));
        assertThat(timings.stream()
                        .filter(timing -> timing.chroma420() == Chroma420.ALSO)
                        .map(AcceptedTiming::number))
                .containsExactly(97, 96);
    }

    @Test
    void aMapWithoutBitsMeansAll() {
        // §7.5.11: a length of 1.
        assertThat(read(new CtaBuilder().video(96, 97).dataBlock(7, 15)))
                .extracting(AcceptedTiming::chroma420)
                .containsExactly(Chroma420.ALSO, Chroma420.ALSO);
    }

    @Test
    void whatBothListsHoldIsTakenInEveryFormat() {
        assertThat(read(new CtaBuilder().video(97).dataBlock(7, 14, 97)))
                .extracting(AcceptedTiming::chroma420)
                .containsExactly(Chroma420.ALSO);
    }

    @Test
    void bitsPastTheLastDescriptorMeanNothing() {
        assertThat(read(new CtaBuilder().video(97).dataBlock(7, 15, 0xFE)))
                .extracting(AcceptedTiming::chroma420)
                .containsExactly(Chroma420.NOT_LISTED);
    }

    private static List<AcceptedTiming> read(CtaBuilder cta) {
        return EdidReader.read(EdidBuilder.digital(3).extension(cta).build()).timings();
    }
}
