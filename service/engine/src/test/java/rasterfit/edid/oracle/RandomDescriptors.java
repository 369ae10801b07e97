package rasterfit.edid.oracle;

import java.util.Random;
import rasterfit.edid.EdidBuilder;
import rasterfit.timing.Dmt;

/** The display descriptors of a base block (E-EDID table 3.23), by chance but for the seed. */
final class RandomDescriptors {
    private static final int CONTENT = 14;

    private final Random random;
    private boolean hasEstablishedThree;

    /** For one EDID. */
    RandomDescriptors(Random random) {
        this.random = random;
    }

    /** One descriptor that is no detailed timing. */
    void addTo(EdidBuilder edid, int revision) {
        switch (random.nextInt(12)) {
            case 0, 1, 2 -> rangeLimits(edid, revision);
            case 3, 4 -> edid.displayDescriptor(0xFA, standardTimings());
            case 5 -> edid.displayDescriptor(0xF8, cvtCodes());
            case 6 -> {
                // Once at most: what a second one means is not said.
                edid.displayDescriptor(hasEstablishedThree ? 0x10 : 0xF7, establishedThree());
                hasEstablishedThree = true;
            }
            case 7 -> edid.name(text());
            case 8 -> edid.displayDescriptor(0xFF, content(0x41));
            case 9 -> edid.displayDescriptor(0xFB, colourPoints());
            case 10 -> edid.displayDescriptor(0x10, new int[CONTENT]);
            default -> edid.displayDescriptor(random.nextInt(0x10), content(0));
        }
    }

    /** Tables 3.26 to 3.28: every combination of offsets and of formulas; now and then limits without a rate between them. */
    private void rangeLimits(EdidBuilder edid, int revision) {
        int[] content = new int[CONTENT];
        int offsets = random.nextInt(4) == 0
                ? random.nextInt(256)
                : new int[] {0, 2, 3, 8, 10, 11, 12, 14, 15}[random.nextInt(9)];
        content[0] = revision >= 4 || random.nextInt(4) == 0 ? offsets : 0;
        int leastField = edge();
        int leastLine = edge();
        boolean ordered = random.nextInt(8) > 0;
        content[1] = leastField;
        content[2] = ordered ? leastField + random.nextInt(256 - leastField) : edge();
        content[3] = leastLine;
        content[4] = ordered ? leastLine + random.nextInt(256 - leastLine) : edge();
        content[5] = edge();
        content[6] = new int[] {0, 1, 2, 4, random.nextInt(256)}[random.nextInt(5)];
        switch (content[6]) {
            case 2 -> {
                for (int i = 8; i < CONTENT; i++) {
                    content[i] = edge();
                }
            }
            case 4 -> {
                content[7] = random.nextBoolean() ? 0x11 : edge();
                for (int i = 8; i < CONTENT; i++) {
                    content[i] = edge();
                }
            }
            default -> {
                content[7] = 0x0A;
                for (int i = 8; i < CONTENT; i++) {
                    content[i] = 0x20;
                }
            }
        }
        edid.displayDescriptor(0xFD, content);
    }

    private int[] standardTimings() {
        int[] content = new int[CONTENT];
        for (int i = 0; i < 6; i++) {
            int code = standardTiming();
            content[1 + 2 * i] = code >> 8;
            content[2 + 2 * i] = code & 0xFF;
        }
        content[13] = 0x0A;
        return content;
    }

    /** Table 3.19: one that DMT numbers, one that needs a formula, an unused or a reserved one. */
    int standardTiming() {
        return switch (random.nextInt(8)) {
            case 0 -> 0x0101;
            case 1 -> new int[] {0x0000, 0x2020, 0x0001, 0x0100}[random.nextInt(4)];
            case 2, 3, 4 -> {
                int[] codes = Dmt.all().stream()
                        .filter(timing -> timing.standardCode() != null)
                        .mapToInt(Dmt.MonitorTiming::standardCode)
                        .toArray();
                yield codes[random.nextInt(codes.length)];
            }
            default -> {
                int first = 1 + random.nextInt(255);
                yield (first == 0x20 ? 0x21 : first) << 8 | random.nextInt(256);
            }
        };
    }

    /** §3.10.3.8: version 1, then four codes of three bytes, an unused one zero. */
    private int[] cvtCodes() {
        int[] content = new int[CONTENT];
        content[1] = 1;
        for (int i = 0; i < 4; i++) {
            if (random.nextInt(5) > 0) {
                System.arraycopy(cvtCode(), 0, content, 2 + 3 * i, 3);
            }
        }
        return content;
    }

    /** Lines less 2, halved, and aspect; then the preferred rate and which rates are taken. */
    int[] cvtCode() {
        int lines = random.nextInt(8) == 0 ? edge() << 4 : 100 + random.nextInt(800);
        int aspect = random.nextInt(4);
        int preferred = random.nextInt(4);
        int rates = 1 + random.nextInt(31);
        return new int[] {lines & 0xFF, (lines >> 8) << 4 | aspect << 2, preferred << 5 | rates};
    }

    /** §3.10.3.9: version 10, then six bytes of flags of which the last four bits are reserved. */
    private int[] establishedThree() {
        int[] content = new int[CONTENT];
        content[1] = 10;
        for (int i = 2; i < 8; i++) {
            content[i] = edge();
        }
        content[7] &= 0xF0;
        return content;
    }

    private int[] colourPoints() {
        int[] content = content(0);
        content[1] = 1;
        content[6] = 2;
        return content;
    }

    private int[] content(int base) {
        int[] content = new int[CONTENT];
        for (int i = 1; i < CONTENT; i++) {
            content[i] = base == 0 ? random.nextInt(256) : base + random.nextInt(26);
        }
        return content;
    }

    private String text() {
        StringBuilder text = new StringBuilder();
        int length = random.nextInt(14);
        for (int i = 0; i < length; i++) {
            text.append((char) ('A' + random.nextInt(26)));
        }
        return text.toString();
    }

    private int edge() {
        int kind = random.nextInt(10);
        return kind == 0 ? 0 : kind == 1 ? 255 : random.nextInt(256);
    }
}
