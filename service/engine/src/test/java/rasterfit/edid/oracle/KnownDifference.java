package rasterfit.edid.oracle;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import rasterfit.edid.oracle.Facts.Difference;
import rasterfit.quantity.Rational;
import rasterfit.timing.Dmt;
import rasterfit.timing.Polarity;
import rasterfit.timing.Scan;

/**
 * Where {@code edid-decode} (Debian, 2022-03-15 and later) is not followed in EDIDs, why, and in how many values of the supplied
 * EDIDs and of the first ones by chance. The numbers may only fall.
 */
enum KnownDifference {
    /**
     * It takes the active pixels and lines of a detailed timing as they stand and cuts the borders out of the blanking; but
     * active is border, addressable and border again (E-EDID A2 §3.12).
     */
    BORDERS(2, 2256) {
        @Override
        boolean explains(Difference difference, Case edid) {
            String name = listed(difference);
            String rest = difference.name().substring(name.length());
            if (!name.startsWith("detailed ") || !rest.matches(" (horizontal|vertical) (active|back porch)")) {
                return false;
            }
            String axis = name + rest.replaceAll(" (active|back porch)", "");
            int fields = rest.startsWith(" vertical") && edid.ours().get(name + " scan") == Scan.INTERLACED ? 2 : 1;
            int cut = edid.surplus(axis + " back porch");
            return cut > 0 && cut % 2 == 0 && -edid.surplus(axis + " active") == fields * cut;
        }
    },

    /** FFh in all bytes is filler, which it prints as 4095 by 8190 pixels. */
    FILLER_AS_TIMING(1, 45) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("detailed timings of one value") && difference.ours() == null;
        }
    },

    /** It takes a detailed timing below 10 MHz for invalid; E-EDID A2 table 3.21 begins at 10 kHz. */
    SLOW_CLOCK(0, 82) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("detailed timings below 10 MHz") && difference.theirs() == null;
        }
    },

    /** It ends the list of an extension at a slot of zeros, which displays leave in front of timings. */
    TIMINGS_BEHIND_ZEROS(27, 0) {
        @Override
        boolean explains(Difference difference, Case edid) {
            boolean isCount = difference.name().equals("detailed timings");
            boolean isTiming = difference.name().startsWith("detailed ") && difference.theirs() == null;
            return (isCount || isTiming) && edid.hasTimingBehindZeros();
        }
    },

    /** It takes every standard timing whose first byte is 01h for an unused one; only 01 01 is (E-EDID A2 table 3.19). */
    NARROW_STANDARD_TIMING(1, 83) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().endsWith("standard timings of 256 pixels") && difference.theirs() == null;
        }
    },

    /** 20 20 in the place of a standard timing is padding of a text, which it reads as 504 pixels at 92 Hz (common practice). */
    SPACES_AS_TIMING(0, 77) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().endsWith("standard timings of spaces") && difference.ours() == null;
        }
    },

    /** Before EDID 1.2 it gives a standard timing without a DMT code no raster, where GTF gives one from 1.3 on. */
    NO_FORMULA_BEFORE_1_2(0, 2716) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return edid.revision() < 2
                    && listed(difference).startsWith("standard ")
                    && edid.theirs().get(listed(difference) + " size") != null
                    && edid.ours().get(listed(difference) + " size") == null;
        }
    },

    /** Before EDID 1.3 the bits of 16:10 meant a square (E-EDID A2 table 3.19 note), yet it takes the 16:10 raster of DMT. */
    SQUARE_TIMING(0, 656) {
        @Override
        boolean explains(Difference difference, Case edid) {
            String name = listed(difference);
            return name.startsWith("standard ")
                    && edid.revision() < 3
                    && edid.theirs().get(name + " horizontal active") instanceof Integer across
                    && edid.theirs().get(name + " vertical active") instanceof Integer down
                    && across * 10 == down * 16
                    && edid.isOursSquare(name, across);
        }
    },

    /** It makes the timings of a display with a secondary curve of GTF by the default one. */
    SECONDARY_CURVE(0, 180) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return listed(difference).startsWith("standard ")
                    && "SECONDARY_GTF".equals(edid.ours().get("range formula"))
                    && edid.ours().get(listed(difference) + " vertical polarity") != Polarity.POSITIVE
                    && edid.theirs().get(listed(difference) + " vertical polarity") == Polarity.POSITIVE;
        }
    },

    /** It takes CVT for the formula if any descriptor says so, also one with impossible limits or behind another one. */
    CVT_OF_ANOTHER_DESCRIPTOR(0, 63) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return listed(difference).startsWith("standard ")
                    && !"CVT".equals(edid.ours().get("range formula"))
                    && edid.hasCvtLimits();
        }
    },

    /** It reads the standard timings of a block of further timings as those of an EDID 1.3, whatever the EDID and its limits. */
    FURTHER_TIMINGS_AS_OF_1_3(0, 129) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return listed(difference).startsWith("further standard ")
                    && (edid.revision() < 3
                            || Set.of("CVT", "SECONDARY_GTF")
                                    .contains(String.valueOf(edid.ours().get("range formula"))));
        }
    },

    /** As in {@code rasterfit.timing.KnownDifference}: an aspect of CVT has to hold exactly. */
    TRUNCATED_ASPECT(0, 151) {
        @Override
        boolean explains(Difference difference, Case edid) {
            String name = listed(difference);
            return edid.theirs().get(name + " horizontal active") instanceof Integer across
                    && edid.theirs().get(name + " vertical active") instanceof Integer down
                    && edid.theirs().get(name + " vertical sync") instanceof Integer sync
                    && Objects.equals(edid.ours().get(name + " vertical sync"), 10)
                    && sync != 10
                    && rasterfit.timing.KnownDifference.verticalSyncOfTruncatedAspect(across, down)
                            .equals(Optional.of(sync))
                    && Set.of("vertical sync", "vertical back porch", "vertical total", "pixel clock")
                            .contains(difference.name().substring(name.length() + 1));
        }
    },

    /** As in {@code rasterfit.timing.KnownDifference}: its clock by CVT can fall one step short. */
    CLOCK_ON_A_STEP(0, 0) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().matches("(CVT code|standard|DisplayID) \\d+ pixel clock")
                    && difference.ours() instanceof Rational ours
                    && difference.theirs() instanceof Rational theirs
                    && ours.minus(theirs).equals(Rational.of(250_000));
        }
    },

    /** Limits that contradict each other are left out here. */
    IMPOSSIBLE_LIMITS(0, 107) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().startsWith("range ")
                    && edid.ours().get("range formula") == null
                    && Boolean.FALSE.equals(edid.theirs().get("range limits possible"));
        }
    },

    /** Range limits speak of CVT from EDID 1.4 on (E-EDID A2 table 3.26). */
    CVT_BEFORE_1_4(0, 203) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().startsWith("range ")
                    && edid.revision() < 4
                    && "CVT".equals(edid.theirs().get("range formula"))
                    && "UNKNOWN".equals(edid.ours().get("range formula"));
        }
    },

    /** A greatest clock of nothing or less, with what CVT takes off, is none. */
    CLOCK_BELOW_ZERO(0, 1) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("range greatest clock")
                    && difference.ours() == null
                    && difference.theirs() instanceof Rational clock
                    && clock.signum() <= 0;
        }
    },

    /** A greatest TMDS clock of 0 says nothing (HDMI 1.3a table 8-6). */
    ZERO_TMDS_CLOCK(0, 33) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("HDMI max TMDS clock")
                    && difference.ours() == null
                    && Rational.ZERO.equals(difference.theirs());
        }
    },

    /** 254 and 255 are reserved (CTA-861-I §7.5.1), and so is HDMI VIC 0; it lists them as unknown ones. */
    RESERVED_NUMBERS(0, 51) {
        @Override
        boolean explains(Difference difference, Case edid) {
            if (difference.name().matches("vic:25[45] .*")) {
                return difference.ours() == null;
            }
            return difference.name().matches("(HDMI )?VICs")
                    && difference.ours() instanceof List<?> ours
                    && difference.theirs() instanceof List<?> theirs
                    && theirs.stream()
                            .filter(vic -> !Set.of(0, 254, 255).contains(vic))
                            .toList()
                            .equals(ours);
        }
    },

    /** Week FFh stands for a model year from EDID 1.4 on (E-EDID A2 table 3.7). */
    MODEL_YEAR_BEFORE_1_4(0, 28) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("model year") && edid.revision() < 4;
        }
    },

    /** A year of 0 is not stated here. */
    YEAR_ZERO(0, 9) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("year") && edid.isYearZero();
        }
    },

    /** HDMI latencies are 2 · (code − 1) ms (HDMI 1.4, from memory); it prints 2 · code + 1. */
    LATENCY(2, 71) {
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
    PREFERRED_WITHOUT_MARK(3, 92) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("preferred")
                    && String.valueOf(difference.theirs()).equals("[]")
                    && !(edid.isPreferredMarked() && edid.beginsWithTiming());
        }
    },

    /** A code whose width is cut to no cell at all; it lists 0 pixels. */
    CVT_CODE_OF_NO_PIXELS(0, 5) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("CVT codes of no pixels") && difference.ours() == null;
        }
    },

    /** It gives the fields of VIC 39 half a line more where a detailed timing spells them out (CTA-861-I §7.2.1: they are whole). */
    WHOLE_FIELDS_OF_VIC_39(0, 1) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().matches("detailed \\d+ vertical total")
                    && Objects.equals(difference.ours(), 1250)
                    && Objects.equals(difference.theirs(), 1251);
        }
    },

    /** Its rows of DMT 43h and 4Bh are wrong (VESA DMT 1.13). */
    DMT_TABLE(0, 15) {
        @Override
        boolean explains(Difference difference, Case edid) {
            String name = listed(difference);
            return difference.name().substring(name.length()).startsWith(" vertical")
                    && Stream.of(0x43, 0x4B)
                            .map(id -> Dmt.find(id).orElseThrow().timing())
                            .anyMatch(row -> Objects.equals(
                                            edid.ours().get(name + " pixel clock"),
                                            row.pixelClock().hz())
                                    && Objects.equals(edid.ours().get(name + " vertical total"), row.verticalTotal()));
        }
    },

    /** It passes over the flags of an extension that says that nothing follows them. */
    FLAGS_OF_EMPTY_EXTENSION(0, 3) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return Set.of("underscan", "basic audio", "YCbCr 4:4:4", "YCbCr 4:2:2")
                            .contains(difference.name())
                    && edid.hasFirstFlagsAlone();
        }
    },

    /** Which timings are native is said by their place in the list, and the list differs by borders or impossible timings. */
    NATIVE_BY_PLACE(0, 175) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("native sizes")
                    && (edid.theirs().get("impossible detailed timings") != null
                            || edid.ours().get("detailed timings below 10 MHz") != null
                            || edid.theirs().get("detailed timings of one value") != null
                            || edid.differ("detailed "));
        }
    },

    /** Extensions that disagree on how many detailed timings are native: the greatest number counts here, its last one there. */
    NATIVE_COUNTS_DISAGREE(0, 5) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("native sizes") && edid.nativeCounts() > 1;
        }
    },

    /** Native by bit 1 of byte 18h (EDID 1.4) is the preferred timing, also where the base block has none (as above). */
    NATIVE_OF_EXTENSION(0, 2) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("native sizes")
                    && edid.revision() >= 4
                    && edid.isPreferredMarked()
                    && !edid.beginsWithTiming();
        }
    },

    /** Before EDID 1.4 the bit of the preferred timing says nothing about the panel (E-EDID A2 table 3.14). */
    NATIVE_BY_PREFERENCE(23, 39) {
        @Override
        boolean explains(Difference difference, Case edid) {
            return difference.name().equals("native sizes") && edid.revision() < 4;
        }
    };

    private static final Pattern LISTED =
            Pattern.compile("(detailed|standard|further standard|DisplayID|established|CVT code) \\d+");

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

    /** "standard 12" of "standard 12 pixel clock". */
    private static String listed(Difference difference) {
        Matcher name = LISTED.matcher(difference.name());
        return name.lookingAt() ? name.group() : difference.name();
    }
}
