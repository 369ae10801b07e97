package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Where a defect of an HDMI data block is said to lie. The blocks stand first in their extension: the header at offset 4
 * (CTA-861-I table 60), the n-th byte of the payload at 4 + n; what the bytes mean is HDMI 1.3a §8.3.2 and HDMI 1.4 (from
 * memory).
 */
class HdmiDefectsTest {
    private static List<String> defects(int... payload) {
        EdidReading reading = EdidReader.read(EdidBuilder.digital(3)
                .extension(new CtaBuilder().dataBlock(3, payload))
                .build());
        return reading.defects().stream()
                .map(defect -> defect.code() + " " + defect.blockIndex() + ":" + defect.byteOffset())
                .toList();
    }

    @Test
    void blocksThatAreTooShortAreNamedByTheirHeader() {
        // Identifier and half of the address: 4 bytes, but the address has two.
        assertThat(defects(0x03, 0x0C, 0x00, 0x10)).containsExactly("DATA_BLOCK_TOO_SHORT 1:4");
        assertThat(defects(0x03, 0x0C, 0x00, 0x10, 0x00)).isEmpty();
        // HDMI Forum: identifier, version, rate and flags are 7 bytes at least.
        assertThat(defects(0xD8, 0x5D, 0xC4, 1, 120, 0)).containsExactly("DATA_BLOCK_TOO_SHORT 1:4");
        assertThat(defects(0xD8, 0x5D, 0xC4, 1, 120, 0, 0)).isEmpty();
    }

    @Test
    void aListThatDoesNotFitIsNamedByTheHeader() {
        // Three HDMI VICs are announced, two follow.
        assertThat(defects(0x03, 0x0C, 0x00, 0x10, 0x00, 0x00, 0x2D, 0x20, 0x00, 0x60, 1, 2))
                .containsExactly("DATA_BLOCK_TOO_SHORT 1:4");
    }

    @Test
    void numbersWithoutATimingAreNamedByTheirOwnBytes() {
        // The 11th byte is 0, which is reserved, the 12th is 9; HDMI 1.4 numbers end at 4.
        assertThat(defects(0x03, 0x0C, 0x00, 0x10, 0x00, 0x00, 0x2D, 0x20, 0x00, 0x40, 0, 9))
                .containsExactly("VIC_RESERVED 1:15", "VIC_UNKNOWN 1:16");
    }
}
