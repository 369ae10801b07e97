package rasterfit.app.display;

import rasterfit.edid.VideoCapability;

/**
 * What a display says of ranges and of edges that it cuts off (CTA-861-I §7.5.6).
 *
 * @param rgbRangeSelectable a source may choose between limited and full range RGB and say which it sends
 * @param yccRangeSelectable the same for YCbCr
 * @param preferredTimingScan of the preferred timing
 * @param computerFormatScan of formats of computers
 * @param videoFormatScan of formats of consumer electronics
 */
record DecodedCapability(
        boolean rgbRangeSelectable,
        boolean yccRangeSelectable,
        VideoCapability.Scan preferredTimingScan,
        VideoCapability.Scan computerFormatScan,
        VideoCapability.Scan videoFormatScan) {

    static DecodedCapability of(VideoCapability capability) {
        return new DecodedCapability(
                capability.rgbRangeSelectable(),
                capability.yccRangeSelectable(),
                capability.preferredTiming(),
                capability.computerFormats(),
                capability.videoFormats());
    }
}
