package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The four descriptors of the base block (E-EDID §3.10), each a detailed timing or a display descriptor.
 *
 * @param detailed the possible ones, in order
 * @param standard further standard timings, numbered after those of the base block
 * @param established established timings III
 */
record Descriptors(
        List<DetailedTiming> detailed,
        @Nullable RangeLimits rangeLimits,
        @Nullable String name,
        List<AcceptedTiming> standard,
        List<AcceptedTiming> cvtCodes,
        List<AcceptedTiming> established) {

    private static final int FIRST_OFFSET = 0x36;
    private static final int COUNT = 4;
    private static final int STANDARD_SLOTS = 6;

    private static final int TAG_RANGE_LIMITS = 0xFD;
    private static final int TAG_NAME = 0xFC;
    private static final int TAG_STANDARD = 0xFA;
    private static final int TAG_CVT_CODES = 0xF8;
    private static final int TAG_ESTABLISHED_3 = 0xF7;

    static Descriptors read(Block block, EdidVersion version, DefectLog log) {
        // First of all, since what standard timings mean depends on the limits.
        RangeLimits limits = rangeLimits(block, version, log);
        NominalRasters rasters = new NominalRasters(limits);
        List<DetailedTiming> detailed = new ArrayList<>();
        List<AcceptedTiming> standard = new ArrayList<>();
        List<AcceptedTiming> cvtCodes = new ArrayList<>();
        List<AcceptedTiming> established = new ArrayList<>();
        int nextStandard = BaseBlock.STANDARD_SLOTS + 1;
        int nextCvtCode = 1;
        String name = null;
        for (int offset : offsets()) {
            if (DetailedTiming.isAt(block, offset)) {
                DetailedTiming.read(block, offset, log).ifPresent(detailed::add);
                continue;
            }
            switch (block.at(offset + 3)) {
                case TAG_NAME -> name = name == null ? text(block, offset + 5) : name;
                case TAG_STANDARD -> {
                    standard.addAll(StandardTimings.read(
                            block, offset + 5, STANDARD_SLOTS, nextStandard, version, rasters, log));
                    nextStandard += STANDARD_SLOTS;
                }
                case TAG_CVT_CODES -> {
                    cvtCodes.addAll(CvtCodes.read(block, offset + 6, CvtCodes.SLOTS, nextCvtCode, log));
                    nextCvtCode += CvtCodes.NUMBERS;
                }
                case TAG_ESTABLISHED_3 -> {
                    EstablishedTimings.readThird(block, offset + 6).stream()
                            .filter(timing -> !established.contains(timing))
                            .forEach(established::add);
                }
                default -> {
                    // Serial number, text, colour, dummy and manufacturer descriptors hold no timing.
                }
            }
        }
        return new Descriptors(
                List.copyOf(detailed),
                limits,
                name,
                List.copyOf(standard),
                List.copyOf(cvtCodes),
                List.copyOf(established));
    }

    private static List<Integer> offsets() {
        return IntStream.range(0, COUNT)
                .mapToObj(slot -> FIRST_OFFSET + slot * DetailedTiming.BYTES)
                .toList();
    }

    private static @Nullable RangeLimits rangeLimits(Block block, EdidVersion version, DefectLog log) {
        return offsets().stream()
                .filter(offset -> !DetailedTiming.isAt(block, offset) && block.at(offset + 3) == TAG_RANGE_LIMITS)
                .flatMap(offset -> RangeLimitsReader.read(block, offset, version, log).stream())
                .findFirst()
                .orElse(null);
    }

    /** E-EDID §3.10.3.4: up to 13 characters, ended by a line feed; what is not printable ASCII is left out. */
    private static @Nullable String text(Block block, int offset) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 13 && block.at(offset + i) != '\n'; i++) {
            int character = block.at(offset + i);
            if (character >= ' ' && character <= '~') {
                text.append((char) character);
            }
        }
        String trimmed = text.toString().trim();
        return trimmed.isEmpty() ? null : trimmed;
    }
}
