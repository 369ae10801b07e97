/**
 * What a display says of itself. {@link rasterfit.edid.EdidReader} is the entry point: bytes in, an {@link
 * rasterfit.edid.EdidReading} out, whatever the bytes are; what is wrong with them is an {@link
 * rasterfit.edid.EdidDefect}. Blocks that are not read yet (DisplayID, 4:2:0, further CTA-861 data blocks) are named by
 * {@link rasterfit.edid.DefectCode} {@code ..._NOT_READ} and get their reader beside {@code CtaDataBlocks}. Sources: VESA
 * E-EDID release A2, CTA-861-I, HDMI 1.3a.
 */
@NullMarked
package rasterfit.edid;

import org.jspecify.annotations.NullMarked;
