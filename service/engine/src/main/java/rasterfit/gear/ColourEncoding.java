package rasterfit.gear;

import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import rasterfit.quantity.Frequency;

/**
 * How colour rides on composite video, Y/C and RF: line count and subcarrier, such as {@code C525_358}.
 *
 * @param name {@code C525_} or {@code C625_} and what tells the subcarrier apart
 */
public record ColourEncoding(String name) {
    private static final Pattern NAME = Pattern.compile("C(525|625)_[A-Z0-9]{1,10}");

    public static final ColourEncoding C525_358 = new ColourEncoding("C525_358");
    public static final ColourEncoding C625_443 = new ColourEncoding("C625_443");

    /** BT.1700 and BT.470, in hertz; a system that sends colour by frequency has no single subcarrier. */
    private static final Map<String, Frequency> SUBCARRIERS = Map.of(
            "C525_358", Frequency.parseHz("315000000/88"),
            "C525_443", Frequency.parseHz("4433618.75"),
            "C625_443", Frequency.parseHz("4433618.75"),
            "C525_M", Frequency.parseHz("511312500/143"),
            "C625_N", Frequency.parseHz("3582056.25"));

    public ColourEncoding {
        if (!isKnown(name)) {
            throw new IllegalArgumentException(
                    "a colour encoding is named by line count and subcarrier, such as C625_443");
        }
    }

    public static boolean isKnown(String name) {
        return NAME.matcher(name).matches();
    }

    /** The usual one of a line standard (common practice); empty where there is none. */
    public static Optional<ColourEncoding> usualOf(LineStandard standard) {
        return switch (standard) {
            case L525_60 -> Optional.of(C525_358);
            case L625_50 -> Optional.of(C625_443);
            case OTHER -> Optional.empty();
        };
    }

    public Optional<Frequency> subcarrier() {
        return Optional.ofNullable(SUBCARRIERS.get(name));
    }

    /** Whether it belongs to 525 lines. */
    public boolean is525() {
        return name.startsWith("C525");
    }

    @Override
    public String toString() {
        return name;
    }
}
