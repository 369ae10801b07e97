package rasterfit.edid.oracle;

import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import rasterfit.edid.EdidReader;
import rasterfit.edid.oracle.Comparison.Case;
import rasterfit.edid.oracle.Facts.Difference;

/**
 * Where {@code edid-decode} (Debian, 2022-03-15 and later) is not followed in EDIDs, why, and in how many values of the supplied
 * EDIDs and of the first ones by chance. The numbers may only fall.
 */
enum KnownDifference {
    /**
     * It takes the active pixels and lines of a detailed timing as they stand and cuts the borders out of the blanking; but
     * active is border, addressable and border again (E-EDID A2 §3.12).
     */
    BORDERS(0, 0) {
        private final Pattern names = Pattern.compile("detailed \\d+ (horizontal|vertical) (active|back porch)");

        @Override
        boolean explains(Difference difference, Case edid) {
            return names.matcher(difference.name()).matches()
                    && difference.ours() instanceof Integer ours
                    && difference.theirs() instanceof Integer theirs
                    && (difference.name().endsWith("active") ? ours < theirs : ours > theirs)
                    && (ours - theirs) % 2 == 0;
        }
    },

    /** FFh in all bytes is filler, which it prints as 4095 by 8190 pixels. */
    FILLER_AS_TIMING(0, 0) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("detailed timings of one value") && difference.ours() == null;
        }
    },

    /** It takes a detailed timing below 10 MHz for invalid; E-EDID A2 table 3.21 begins at 10 kHz. */
    SLOW_CLOCK(0, 0) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("detailed timings below 10 MHz") && difference.theirs() == null;
        }
    },

    /** It ends the list of an extension at a slot of zeros, which displays leave in front of timings. */
    TIMINGS_BEHIND_ZEROS(0, 0) {
        @Override
        boolean explains(Difference difference, Case edid) {
            boolean isCount = difference.name().equals("detailed timings");
            boolean isTiming = difference.name().startsWith("detailed ") && difference.theirs() == null;
            return (isCount || isTiming) && hasTimingBehindZeros(edid.edid());
        }
    },

    /** It takes every standard timing whose first byte is 01h for an unused one; only 01 01 is (E-EDID A2 table 3.19). */
    NARROW_STANDARD_TIMING(0, 0) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("standard timings of 256 pixels") && difference.theirs() == null;
        }
    },

    /** HDMI latencies are 2 · (code − 1) ms (HDMI 1.4, from memory); it prints 2 · code + 1. */
    LATENCY(0, 0) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().endsWith(" latency")
                    && difference.ours() instanceof Integer ours
                    && difference.theirs() instanceof Integer theirs
                    && theirs == ours + 3;
        }
    },

    /**
     * It prefers the first detailed timing only if it stands in the base block and bit 1 of byte 18h is set; E-EDID A2 table 5.1
     * has the first one in front whatever the bit says.
     */
    PREFERRED_WITHOUT_MARK(0, 0) {
        @Override
        boolean explains(Difference difference, Case edid) {
            boolean isMarked = (edid.edid()[0x18] & 2) != 0;
            boolean isInBase = (edid.edid()[0x36] | edid.edid()[0x37]) != 0;
            return difference.name().equals("preferred")
                    && String.valueOf(difference.theirs()).equals("[]")
                    && !(isMarked && isInBase);
        }
    },

    /** Before EDID 1.4 the bit of the preferred timing says nothing about the panel (E-EDID A2 table 3.14). */
    NATIVE_BY_PREFERENCE(0, 0) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("native sizes") && edid.edid()[0x13] < 4;
        }
    };

    /** How many values of the supplied EDIDs differ for this reason. */
    final int supplied;
    /** How many of those by chance. */
    final int byChance;

    KnownDifference(int supplied, int byChance) {
        this.supplied = supplied;
        this.byChance = byChance;
    }

    abstract boolean explains(Difference difference, Case edid);

    static Optional<KnownDifference> of(Difference difference, Case edid) {
        return Stream.of(values())
                .filter(known -> known.explains(difference, edid))
                .findFirst();
    }

    private static boolean hasTimingBehindZeros(byte[] edid) {
        for (int start = EdidReader.BLOCK_BYTES; start < edid.length; start += EdidReader.BLOCK_BYTES) {
            boolean zeros = false;
            int first = edid[start + 2] & 0xFF;
            for (int at = first; edid[start] == 2 && first >= 4 && at + 18 <= 127; at += 18) {
                boolean isTiming = edid[start + at] != 0 || edid[start + at + 1] != 0;
                if (zeros && isTiming) {
                    return true;
                }
                zeros |= !isTiming;
            }
        }
        return false;
    }
}
