package rasterfit.edid;

/** What can be wrong with, or left unread in, an EDID. */
public enum DefectCode {
    /** The data end inside a block; the part of a block is left out. */
    LENGTH_NOT_WHOLE_BLOCKS,
    /** More than 256 blocks; the rest is left out. */
    TOO_LONG,
    /** The first 8 bytes are not 00 FF FF FF FF FF FF 00; nothing is read. */
    HEADER_MISSING,
    CHECKSUM_WRONG,
    /** Not EDID 1.0 to 1.4; read as the nearest of them. */
    VERSION_UNKNOWN,
    MANUFACTURER_ID_INVALID,
    /** Byte 7Eh and the number of blocks differ. */
    EXTENSION_COUNT_DIFFERS,
    /** A timing that no raster can have or no formula makes, or filler; left out. */
    DETAILED_TIMING_IMPOSSIBLE,
    STANDARD_TIMING_RESERVED,
    /** A CVT code with reserved bits, or without a rate or a size. */
    CVT_CODE_RESERVED,
    /** Limits with a minimum above the maximum are left out; a zero minimum is kept. */
    RANGE_LIMITS_IMPOSSIBLE,
    /** Offsets of EDID 1.4 in an earlier EDID are not applied, reserved ones neither. */
    RANGE_OFFSETS_UNDEFINED,
    /** The size in millimetres disagrees with the one in centimetres, which is used. */
    IMAGE_SIZE_CONTRADICTORY,
    /** An analog display with an HDMI data block; taken for HDMI. */
    LINK_CONTRADICTORY,
    EXTENSION_LAYOUT_INVALID,
    DATA_BLOCK_OVERRUN,
    DATA_BLOCK_TOO_SHORT,
    /** A short video descriptor of 0, 128, 254 or 255, or the number 0 of a timing; left out. */
    VIC_RESERVED,
    /** A number without a published timing; kept as an entry without a raster. */
    VIC_UNKNOWN,
    EXTENSION_NOT_READ(true),
    DATA_BLOCK_NOT_READ(true),
    /** More was wrong than is listed. */
    FURTHER_DEFECTS_OMITTED;

    private final boolean note;

    DefectCode() {
        this(false);
    }

    DefectCode(boolean note) {
        this.note = note;
    }

    /** True where the EDID breaks no rule and only this reader leaves something out. */
    public boolean isNote() {
        return note;
    }
}
