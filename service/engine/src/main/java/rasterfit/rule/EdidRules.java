package rasterfit.rule;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import rasterfit.edid.DefectCode;
import rasterfit.edid.EdidDefect;

/** What is said about an EDID that breaks its standard, or of which something was not read. */
public final class EdidRules {
    private static final List<Rule> BY_CODE =
            Arrays.stream(DefectCode.values()).map(EdidRules::rule).toList();

    static final List<Rule> ALL = BY_CODE;

    private EdidRules() {}

    public static Finding finding(EdidDefect defect) {
        return new Finding(BY_CODE.get(defect.code().ordinal()), defect.message());
    }

    private static Rule rule(DefectCode code) {
        return new Rule(
                "edid." + code.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                Stage.DISPLAY_INPUT,
                code.isNote() ? Severity.NOTE : Severity.WARNING,
                statement(code),
                source(code));
    }

    private static String statement(DefectCode code) {
        return switch (code) {
            case LENGTH_NOT_WHOLE_BLOCKS ->
                "An EDID is a number of whole blocks of 128 bytes; a part of one is left out.";
            case TOO_LONG -> "An EDID has at most 256 blocks; the rest is left out.";
            case HEADER_MISSING -> "An EDID begins with 00 FF FF FF FF FF FF 00; without it nothing is read.";
            case CHECKSUM_WRONG -> "The bytes of each block, and of each section of DisplayID, add up to 0 modulo 256.";
            case VERSION_UNKNOWN -> "EDID 1.0 to 1.4 are known; another version is read as the nearest.";
            case MANUFACTURER_ID_INVALID -> "The manufacturer is three letters in five bits each.";
            case EXTENSION_COUNT_DIFFERS -> "Byte 7Eh of the base block counts the extension blocks that follow.";
            case DETAILED_TIMING_IMPOSSIBLE ->
                "A detailed timing describes a raster; one that cannot exist is left out.";
            case STANDARD_TIMING_RESERVED -> "An unused standard timing reads 01 01; reserved values are left out.";
            case CVT_CODE_RESERVED -> "A CVT code states a size and at least one rate, and no reserved bit.";
            case RANGE_LIMITS_IMPOSSIBLE ->
                "A least rate is neither 0 nor above the greatest; limits that contain no rate are left out.";
            case RANGE_OFFSETS_UNDEFINED -> "Offsets of range limits exist from EDID 1.4 on; others are not applied.";
            case IMAGE_SIZE_CONTRADICTORY ->
                "The image size of the preferred timing agrees with that of the screen; else the latter is used.";
            case LINK_CONTRADICTORY -> "Only a digital input has an HDMI data block; it is taken for HDMI.";
            case EXTENSION_LAYOUT_INVALID ->
                "The parts of an extension follow each other inside its block, and zeros follow the last.";
            case DATA_BLOCK_OVERRUN -> "A data block ends before that which follows the data blocks.";
            case DATA_BLOCK_TOO_SHORT -> "A data block is long enough for what it must hold.";
            case VIC_RESERVED ->
                "Short video descriptors of 0, 128, 254 and 255 and the timing number 0 are reserved and are left out.";
            case VIC_UNKNOWN -> "A video timing with a number that has no published raster stays without one.";
            case EXTENSION_NOT_READ ->
                "An extension of another kind than CTA-861, DisplayID and further timings is not read.";
            case DATA_BLOCK_NOT_READ ->
                "A data block about timings or links that this reader does not know is left out.";
            case FURTHER_DEFECTS_OMITTED -> "Beyond a number of defects the rest is not listed.";
        };
    }

    private static String source(DefectCode code) {
        return switch (code) {
            case EXTENSION_LAYOUT_INVALID, DATA_BLOCK_OVERRUN, DATA_BLOCK_TOO_SHORT, VIC_RESERVED, VIC_UNKNOWN ->
                "CTA-861-I §7.3, §7.4, §7.5; DisplayID 1.3, 2.1a";
            case LINK_CONTRADICTORY -> "HDMI 1.3a §8.3";
            case EXTENSION_NOT_READ, DATA_BLOCK_NOT_READ, FURTHER_DEFECTS_OMITTED, TOO_LONG -> "assumption";
            case LENGTH_NOT_WHOLE_BLOCKS,
                    HEADER_MISSING,
                    CHECKSUM_WRONG,
                    VERSION_UNKNOWN,
                    MANUFACTURER_ID_INVALID,
                    EXTENSION_COUNT_DIFFERS,
                    DETAILED_TIMING_IMPOSSIBLE,
                    STANDARD_TIMING_RESERVED,
                    CVT_CODE_RESERVED,
                    RANGE_LIMITS_IMPOSSIBLE,
                    RANGE_OFFSETS_UNDEFINED,
                    IMAGE_SIZE_CONTRADICTORY -> "E-EDID A2 §3";
        };
    }
}
