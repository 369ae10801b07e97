package rasterfit.edid;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;

/**
 * The input that this EDID belongs to.
 *
 * @param analog present unless the base block declares a digital input
 * @param digital present where the base block declares a digital input
 * @param maxTmdsClock what a digital source must not exceed: 165 MHz unless an HDMI block declares more (HDMI 1.3a
 *     §8.3); absent for an analog input
 * @param hdmi absent without an HDMI data block
 * @param hdmiForum absent without an HDMI Forum data block
 * @param ctaFlags absent without a CTA-861 extension of revision 2 or later
 * @param capability absent without a video capability data block
 */
public record VideoInput(
        VideoLink link,
        @Nullable AnalogInput analog,
        @Nullable DigitalInput digital,
        @Nullable Frequency maxTmdsClock,
        @Nullable HdmiBlock hdmi,
        @Nullable HdmiForumBlock hdmiForum,
        @Nullable CtaFlags ctaFlags,
        @Nullable VideoCapability capability) {}
