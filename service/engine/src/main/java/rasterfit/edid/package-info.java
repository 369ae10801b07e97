/**
 * What a display says of itself. {@link rasterfit.edid.EdidReader} is the entry point: bytes in, an {@link
 * rasterfit.edid.EdidReading} out, whatever the bytes are; what is wrong with them is an {@link
 * rasterfit.edid.EdidDefect}. Blocks about timings that are not read are named by {@link rasterfit.edid.DefectCode}
 * {@code ..._NOT_READ} and get their reader in {@code CtaDataBlocksReader} or {@code Extensions}. Sources: VESA
 * E-EDID release A2, CTA-861-I, HDMI 1.3a. The numbers of E-EDID tables from 3.29 on and of §3.10.3, of CTA-861-I §7.5.2 on, and
 * everything of DisplayID and HDMI after 1.3a are given from memory.
 */
@NullMarked
package rasterfit.edid;

import org.jspecify.annotations.NullMarked;
