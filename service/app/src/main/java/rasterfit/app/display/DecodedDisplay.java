package rasterfit.app.display;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.edid.EdidReading;
import rasterfit.edid.ProductIdentity;
import rasterfit.edid.ScreenSize;
import rasterfit.edid.VideoInput;
import rasterfit.edid.VideoLink;
import rasterfit.timing.RasterTiming;

/**
 * What an EDID says. Without a header only {@code findings} has content.
 *
 * @param product absent without a header
 * @param link the kind of signal; absent without a header
 * @param timings detailed, DisplayID, VIC, HDMI VIC, standard, CVT codes, established, each in the order of the EDID
 * @param rangeLimits absent where not stated or not credible; whole Hz and kHz as declared
 * @param continuousFrequency whether any timing within the limits is promised (E-EDID table 3.14)
 * @param maxTmdsClockHz absent for an analog input
 * @param videoCapability absent without the block of CTA-861-I §7.5.6
 * @param panel absent where neither a preferred timing nor a size is stated
 * @param findings defects, and what was not read
 */
record DecodedDisplay(
        @Nullable Product product,
        @Nullable VideoLink link,
        List<DecodedTiming> timings,
        @Nullable DecodedLimits rangeLimits,
        boolean continuousFrequency,
        @Nullable String maxTmdsClockHz,
        @Nullable DecodedCapability videoCapability,
        @Nullable DecodedPanel panel,
        List<DecodeFinding> findings) {

    /**
     * @param manufacturer three letters
     * @param edidVersion {@code 1.3}
     * @param week of manufacture
     * @param year of manufacture, or the model year
     */
    record Product(
            String manufacturer,
            int productCode,
            String edidVersion,
            @Nullable Integer week,
            @Nullable Integer year,
            @Nullable String name) {
        static Product of(ProductIdentity product) {
            return new Product(
                    product.manufacturer(),
                    product.productCode(),
                    product.version().toString(),
                    product.week(),
                    product.year(),
                    product.displayName());
        }
    }

    /**
     * @param pixels the active size of the preferred timing
     * @param aspect width to height, where the EDID gives a shape in place of a size
     */
    record DecodedPanel(
            @Nullable Pixels pixels,
            @Nullable Size sizeMm,
            @Nullable String aspect) {}

    record Pixels(int columns, int rows) {}

    record Size(int width, int height) {}

    static DecodedDisplay of(EdidReading reading) {
        VideoInput input = reading.input();
        return new DecodedDisplay(
                reading.product() == null ? null : Product.of(reading.product()),
                input == null ? null : input.link(),
                reading.timings().stream().map(DecodedTiming::of).toList(),
                reading.rangeLimits() == null
                        ? null
                        : DecodedLimits.of(
                                reading.rangeLimits(), reading.defaultGtf() || reading.continuousFrequency()),
                reading.continuousFrequency(),
                input == null ? null : Plain.exactOrAbsent(input.maxTmdsClock()),
                input == null || input.capability() == null ? null : DecodedCapability.of(input.capability()),
                panel(reading),
                reading.defects().stream().map(DecodeFinding::of).toList());
    }

    private static @Nullable DecodedPanel panel(EdidReading reading) {
        RasterTiming preferred =
                reading.preferredTiming().map(timing -> timing.timing()).orElse(null);
        ScreenSize screen = reading.screen();
        ScreenSize.SizeMm size = screen == null ? null : screen.sizeMm();
        if (preferred == null && size == null) {
            return null;
        }
        return new DecodedPanel(
                preferred == null ? null : new Pixels(preferred.horizontalActive(), preferred.verticalActive()),
                size == null ? null : new Size(size.width(), size.height()),
                screen == null ? null : Plain.exactOrAbsent(screen.aspect()));
    }
}
