package rasterfit.edid;

/**
 * One thing that is wrong with an EDID, or that was not read.
 *
 * @param blockIndex 0 for the base block
 * @param byteOffset within the block
 * @param message a sentence for the owner of the display, the value first
 */
public record EdidDefect(DefectCode code, int blockIndex, int byteOffset, String message) {}
