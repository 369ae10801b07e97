package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import rasterfit.timing.Cta861;
import rasterfit.timing.RasterTiming;

/** What tells one unit from another goes; what {@code EdidReader} reads stays. */
class EdidPrivacyTest {
    private static final RasterTiming HD = Cta861.find(16).orElseThrow().timing();
    private static final RasterTiming SD = Cta861.find(2).orElseThrow().timing();

    /** E-EDID A2 §3.4.3: bytes 0Ch to 0Fh; §3.10.3.1: tag FFh, up to 13 characters. */
    @Test
    void theSerialNumbersOfTheBaseBlockAreZero() {
        byte[] edid = base("A1B2C3D4E5").build();
        byte[] without = EdidPrivacy.withoutSerialNumbers(edid);

        assertThat(Arrays.copyOfRange(without, 0x0C, 0x10)).containsOnly(0);
        assertThat(new String(without, 0x48 + 5, 13, StandardCharsets.US_ASCII)).isEqualTo("0000000000000");
        for (int i = 0; i < edid.length; i++) {
            boolean isSerial = (i >= 0x0C && i < 0x10) || (i >= 0x4D && i < 0x5A) || i == 127;
            if (!isSerial) {
                assertThat(without[i]).as("byte " + i).isEqualTo(edid[i]);
            }
        }
        assertThat(EdidPrivacy.hasSerialNumbers(edid)).isTrue();
        assertThat(EdidPrivacy.hasSerialNumbers(without)).isFalse();
        assertThat(EdidReader.read(without).defects()).isEmpty();
    }

    /** Display descriptors may also stand behind the data blocks (CTA-861-I §7.3, from memory: any 18-byte descriptor). */
    @Test
    void aSerialNumberBehindTheDataBlocksGoesToo() {
        byte[] edid = base("X")
                .extension(new CtaBuilder().video(16).detailed(SD, 800, 450).descriptor(serialDescriptor("UNIT 4711")))
                .build();
        assertThat(new String(edid, StandardCharsets.ISO_8859_1)).contains("UNIT 4711");
        byte[] without = EdidPrivacy.withoutSerialNumbers(edid);
        assertThat(new String(without, StandardCharsets.ISO_8859_1)).doesNotContain("4711");
        assertThat(EdidReader.read(without)).isEqualTo(EdidReader.read(edid));
    }

    /** DisplayID keeps a checksum for its section inside that of the block. */
    @Test
    void theSerialNumbersOfDisplayIdGoAndBothChecksumsHold() {
        int[] product = {1, 2, 3, 4, 5, 0x11, 0x22, 0x33, 0x44, 10, 20, 3, 'A', 'B', 'C'};
        int[] tiled = {0x80, 1, 2, 3, 4, 5, 6, 7, 0, 0, 0, 0, 0, 'A', 'B', 'C', 7, 8, 0x99, 0x88, 0x77, 0x66};
        int[] container = new Random(3).ints(16, 1, 256).toArray();
        byte[] edid = base("X")
                .extension(DisplayIdBuilder.version(0x12)
                        .block(0x00, 0, product)
                        .block(0x0A, 0, "SN12345".chars().toArray())
                        .block(0x12, 0, tiled)
                        .block(0x03, 1, DisplayIdDescriptors.typeI(HD, 4, true))
                        .build())
                .extension(DisplayIdBuilder.version(0x20)
                        .block(0x20, 0, product)
                        .block(0x28, 0, tiled)
                        .block(0x29, 0, container)
                        .build())
                .build();
        byte[] without = EdidPrivacy.withoutSerialNumbers(edid);
        String text = new String(without, StandardCharsets.ISO_8859_1);
        assertThat(text)
                .doesNotContain("SN1", latin(0x11, 0x22, 0x33, 0x44), latin(0x99, 0x88, 0x77, 0x66), latin(container))
                .contains("0000000")
                // The vendor, the product and its name stay.
                .contains(latin(1, 2, 3, 4, 5, 0, 0, 0, 0, 10, 20, 3) + "ABC");
        assertThat(EdidReader.read(without)).isEqualTo(EdidReader.read(edid));
        assertThat(EdidReader.read(without).defects()).noneMatch(defect -> defect.code() == DefectCode.CHECKSUM_WRONG);
    }

    @Test
    void aWrongChecksumStaysTheDefectThatItIs() {
        byte[] edid = base("A1B2").build();
        edid[127] = (byte) (edid[127] + 5);
        byte[] without = EdidPrivacy.withoutSerialNumbers(edid);
        assertThat(EdidReader.read(without).defects())
                .extracting(EdidDefect::code)
                .containsExactly(DefectCode.CHECKSUM_WRONG);
        assertThat(without).isNotEqualTo(edid);
    }

    @Test
    void whatIsNoEdidComesBackAsItIs() {
        byte[] noHeader = new byte[128];
        new Random(1).nextBytes(noHeader);
        assertThat(EdidPrivacy.withoutSerialNumbers(noHeader))
                .isEqualTo(noHeader)
                .isNotSameAs(noHeader);
        byte[] cut = Arrays.copyOf(base("A1").build(), 100);
        assertThat(EdidPrivacy.withoutSerialNumbers(cut)).isEqualTo(cut);
        assertThat(EdidPrivacy.withoutSerialNumbers(new byte[0])).isEmpty();
    }

    /** Any bytes behind a header, most of them nonsense: extensions of every layout, overrun blocks, wrong checksums. */
    @Property(tries = 500)
    void whatIsReadOfAnyBytesStaysTheSame(@ForAll long seed) {
        byte[] edid = anyBytes(new Random(seed));
        byte[] without = EdidPrivacy.withoutSerialNumbers(edid);

        assertThat(EdidReader.read(without)).isEqualTo(EdidReader.read(edid));
        assertThat(EdidPrivacy.withoutSerialNumbers(without)).isEqualTo(without);
        assertThat(Arrays.copyOfRange(without, 0x0C, 0x10)).containsOnly(0);
        for (int block = 0; block < edid.length; block += 128) {
            assertThat(sum(without, block)).as("block at " + block).isEqualTo(sum(edid, block));
        }
    }

    private static byte[] anyBytes(Random random) {
        byte[] edid = new byte[128 * (1 + random.nextInt(4))];
        random.nextBytes(edid);
        byte[] header = base("A1B2C3").build();
        System.arraycopy(header, 0, edid, 0, random.nextBoolean() ? 128 : 8);
        for (int block = 128; block < edid.length; block += 128) {
            edid[block] = (byte) (random.nextBoolean() ? 0x02 : 0x70);
            edid[block + 1] = (byte) (random.nextBoolean() ? 0x13 : random.nextInt(256));
            edid[block + 2] = (byte) random.nextInt(128);
            // Descriptors and data blocks with serial numbers where they may be read, and where not.
            byte[] serial = serialDescriptor("SN" + random.nextInt());
            System.arraycopy(serial, 0, edid, block + (edid[block + 2] & 0xFF) % 100, serial.length);
            if (random.nextBoolean()) {
                int[] tags = {0x00, 0x0A, 0x12, 0x20, 0x28, 0x29};
                edid[block + 5] = (byte) tags[random.nextInt(tags.length)];
                edid[block + 7] = (byte) random.nextInt(40);
            }
        }
        return random.nextBoolean() ? EdidBuilder.withChecksums(edid) : edid;
    }

    private static String latin(int... bytes) {
        return new String(bytes, 0, bytes.length);
    }

    private static int sum(byte[] edid, int from) {
        int sum = 0;
        for (int i = from; i < from + 128; i++) {
            sum += edid[i];
        }
        return sum & 0xFF;
    }

    private static EdidBuilder base(String serial) {
        return EdidBuilder.digital(4)
                .patch(0x0C, 0x12, 0x34, 0x56, 0x78)
                .detailed(HD, 800, 450)
                .descriptor(serialDescriptor(serial))
                .name("Lowick 40");
    }

    private static byte[] serialDescriptor(String serial) {
        byte[] descriptor = new byte[18];
        descriptor[3] = (byte) 0xFF;
        byte[] text = (serial + "\n            ").substring(0, 13).getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(text, 0, descriptor, 5, 13);
        return descriptor;
    }
}
