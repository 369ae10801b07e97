package rasterfit.app.gear;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** The power that a device needs. */
public record SupplyBody(
        @Nullable String volts,
        @Nullable Kind kind,
        @Nullable Polarity polarity,
        @Nullable BigDecimal milliamps,
        @Nullable String plug) {

    /** Alternating or direct current. */
    public enum Kind {
        AC,
        DC
    }

    /** What the inner contact of a barrel plug carries. */
    public enum Polarity {
        CENTRE_NEGATIVE,
        CENTRE_POSITIVE
    }
}
