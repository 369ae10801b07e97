package rasterfit.edid;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;

/**
 * The HDMI Forum data block (identifier C4-5D-D8).
 *
 * @param declaredMaxTmdsCharacterRate absent where the block declares none above 340 MHz
 */
public record HdmiForumBlock(int version, @Nullable Frequency declaredMaxTmdsCharacterRate) {}
