package rasterfit.edid;

import org.jspecify.annotations.Nullable;

/**
 * Who made the display and when (E-EDID §3.4). The serial number is not read: nothing here needs it.
 *
 * @param manufacturer three capital letters; {@code ?} stands for a code that is no letter
 * @param week of manufacture, 1 to 54, absent where not stated
 * @param year of manufacture, or the model year, absent where not stated
 * @param displayName from the display product name descriptor, absent where there is none
 */
public record ProductIdentity(
        String manufacturer,
        int productCode,
        EdidVersion version,
        @Nullable Integer week,
        @Nullable Integer year,
        boolean isModelYear,
        @Nullable String displayName) {}
