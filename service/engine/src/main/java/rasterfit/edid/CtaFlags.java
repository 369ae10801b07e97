package rasterfit.edid;

/**
 * Byte 3 of the CTA-861 extension (CTA-861-I table 60).
 *
 * @param underscansIt the display underscans IT formats by default
 * @param basicAudio the input takes basic audio
 */
public record CtaFlags(boolean underscansIt, boolean basicAudio, boolean ycbcr444, boolean ycbcr422) {}
