package rasterfit.edid.oracle;

import java.util.List;
import java.util.stream.IntStream;
import rasterfit.edid.EdidReader;

/** One EDID and what both read from it: what is looked at to tell whether a difference is a known one. */
final class Case {
    private static final int CTA = 2;
    private static final int DESCRIPTOR = 18;
    private static final int CHECKSUM = 127;

    private final byte[] edid;
    private final Facts ours;
    private final Facts theirs;

    Case(byte[] edid, Facts ours, Facts theirs) {
        this.edid = edid;
        this.ours = ours;
        this.theirs = theirs;
    }

    Facts ours() {
        return ours;
    }

    Facts theirs() {
        return theirs;
    }

    /** Ours less theirs, 0 where one of them does not give the number. */
    int surplus(String name) {
        return ours.get(name) instanceof Integer mine && theirs.get(name) instanceof Integer other ? mine - other : 0;
    }

    /** Whether any value differs whose name begins so. */
    boolean differ(String prefix) {
        return ours.differencesFrom(theirs).stream()
                .anyMatch(difference -> difference.name().startsWith(prefix));
    }

    /** Ours is as high as it is wide, with a raster or without one. */
    boolean isOursSquare(String name, int across) {
        Object height = ours.get(name + " vertical active");
        return height != null ? height.equals(across) : List.of(across, across).equals(ours.get(name + " size"));
    }

    /** Of EDID 1. */
    int revision() {
        return edid[0x13];
    }

    boolean isYearZero() {
        return edid[0x11] == 0;
    }

    /** Bit 1 of the feature support byte. */
    boolean isPreferredMarked() {
        return (edid[0x18] & 2) != 0;
    }

    /** The first descriptor of the base block is a detailed timing. */
    boolean beginsWithTiming() {
        return isTiming(0x36);
    }

    /** Any range limits descriptor names CVT. */
    boolean hasCvtLimits() {
        return IntStream.of(0x36, 0x48, 0x5A, 0x6C)
                .anyMatch(at -> !isTiming(at) && (edid[at + 3] & 0xFF) == 0xFD && edid[at + 10] == 4);
    }

    /** An extension has a detailed timing behind a slot without one. */
    boolean hasTimingBehindZeros() {
        return extensions().anyMatch(start -> {
            boolean zeros = false;
            int first = edid[start + 2];
            for (int at = first; first >= 4 && at + DESCRIPTOR <= CHECKSUM; at += DESCRIPTOR) {
                if (zeros && isTiming(start + at)) {
                    return true;
                }
                zeros |= !isTiming(start + at);
            }
            return false;
        });
    }

    /** The first extension with flags has neither data blocks nor timings. */
    boolean hasFirstFlagsAlone() {
        return extensions().filter(start -> edid[start + 1] >= 2).limit(1).anyMatch(start -> edid[start + 2] == 0);
    }

    /** How many different numbers of native timings the extensions give. */
    long nativeCounts() {
        return extensions().map(start -> edid[start + 3] & 15).distinct().count();
    }

    /** Offsets of those of CTA-861. */
    private IntStream extensions() {
        return IntStream.range(1, edid.length / EdidReader.BLOCK_BYTES)
                .map(block -> block * EdidReader.BLOCK_BYTES)
                .filter(start -> edid[start] == CTA);
    }

    private boolean isTiming(int at) {
        return edid[at] != 0 || edid[at + 1] != 0;
    }
}
