package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.edid.ScreenSize.SizeMm;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Cta861;

/** First and last values of fields whose ends the standards name. */
class EdgesOfFieldsTest {
    @Test
    void aNameHasUpTo13PrintableCharacters() {
        // E-EDID A2 §3.10.3.4: 13 bytes, ended by a line feed only where the name is shorter; blank and tilde are the
        // first
        // and the last printable character of ASCII.
        byte[] full = EdidBuilder.digital(4)
                .patch(
                        0x48, 0, 0, 0, 0xFC, 0, 'A', ' ', '~', 'D', 'E', 'F', 'G', 'H', 'I', 'J', 'K', 'L', 'M', 0, 0,
                        0, 0x10)
                .build();
        assertThat(EdidReader.read(full).product().displayName()).isEqualTo("A ~DEFGHIJKLM");
        byte[] cut = EdidBuilder.digital(4)
                .patch(0x48, 0, 0, 0, 0xFC, 0, 'A', 0x1F, 0x7F, 'D', '\n', 'X', ' ', ' ', ' ', ' ', ' ', ' ', ' ')
                .build();
        assertThat(EdidReader.read(cut).product().displayName()).isEqualTo("AD");
    }

    @Test
    void aDetailedTimingIsAcceptedAsItIs() {
        EdidReading reading = EdidReader.read(EdidBuilder.digital(4)
                .detailed(DetailedTimingTest.vic(4), 885, 498)
                .build());
        assertThat(reading.findTiming("detailed:1").orElseThrow().acceptedRasters())
                .containsExactly(Cta861.find(4).orElseThrow().timing());
    }

    @Test
    void aScreenWithoutSidesHasNeitherSizeNorShape() {
        // E-EDID A2 table 3.12: 00h 00h, a projector or a screen of unknown size.
        assertThat(EdidReader.read(EdidBuilder.digital(4).sizeCm(0, 0).build()).screen())
                .isEqualTo(new ScreenSize(null, null));
    }

    private static EdidReading limits(int minField, int maxField, int minLine, int maxLine) {
        // E-EDID A2 table 3.26: FDh, offsets, rates in Hz and kHz, 170 MHz, limits alone (01h), a line feed and blanks.
        return EdidReader.read(EdidBuilder.digital(4)
                .patch(
                        0x48, 0, 0, 0, 0xFD, 0, minField, maxField, minLine, maxLine, 17, 1, 0x0A, 0x20, 0x20, 0x20,
                        0x20, 0x20, 0x20)
                .build());
    }

    @Test
    void limitsMayBeOfOneRate() {
        RangeLimits one = limits(60, 60, 67, 67).rangeLimits();
        assertThat(one).isNotNull();
        assertThat(one.minFieldRate()).isEqualTo(one.maxFieldRate()).isEqualTo(Frequency.ofHz(60));
        assertThat(one.minLineRate()).isEqualTo(one.maxLineRate()).isEqualTo(Frequency.ofHz(67_000));
        assertThat(limits(61, 60, 67, 67).rangeLimits()).isNull();
        assertThat(limits(60, 60, 68, 67).rangeLimits()).isNull();
    }

    @Test
    void limitsThatBeginAtAReservedZeroAreKeptAndTold() {
        for (EdidReading reading : List.of(limits(0, 60, 30, 67), limits(50, 60, 0, 67))) {
            assertThat(reading.rangeLimits()).isNotNull();
            assertThat(reading.defects()).singleElement().satisfies(defect -> {
                assertThat(defect.code()).isEqualTo(DefectCode.RANGE_LIMITS_IMPOSSIBLE);
                assertThat(defect.byteOffset()).isEqualTo(0x48 + 5);
            });
        }
    }

    @Test
    void aSizeHasTwoPositiveSides() {
        assertThat(new SizeMm(1, 1).width()).isEqualTo(1);
        assertThatIllegalArgumentException().isThrownBy(() -> new SizeMm(0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> new SizeMm(1, 0));
    }

    @Test
    void theLastDetailedTimingOfAnExtensionEndsBeforeItsChecksum() {
        // CTA-861-I §7.3: from the offset on every 18 bytes, as long as they end before byte 127. With the offset at
        // 109 there
        // is room for just one, at 110 for none.
        byte[] padded = EdidBuilder.digital(3)
                .extension(new CtaBuilder().detailed(DetailedTimingTest.vic(4), 0, 0))
                .build();
        int[] timing = new int[18];
        for (int i = 0; i < timing.length; i++) {
            timing[i] = padded[128 + 4 + i] & 0xFF;
        }
        assertThat(labels(109, timing)).containsExactly("detailed:1");
        assertThat(labels(110, java.util.Arrays.copyOf(timing, 17))).isEmpty();
    }

    private static List<String> labels(int offset, int[] bytes) {
        byte[] edid = EdidBuilder.digital(3)
                .extension(new CtaBuilder())
                .patch(128 + 2, offset)
                .patch(128 + offset, bytes)
                .build();
        return EdidReader.read(edid).timings().stream()
                .map(AcceptedTiming::label)
                .toList();
    }
}
