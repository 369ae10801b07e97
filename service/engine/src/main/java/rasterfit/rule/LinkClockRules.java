package rasterfit.rule;

import static rasterfit.rule.Severity.REFUSAL;

import java.util.List;
import java.util.Optional;
import rasterfit.quantity.Frequency;

/** The clocks that a digital link can carry. */
public final class LinkClockRules {
    /** DVI 1.0 §2 (from memory) and HDMI 1.3a §6.4: formats below it are sent with repeated pixels. */
    public static final Frequency LEAST_PIXEL_RATE = Frequency.ofHz(25_000_000);

    /** Single-link DVI, and HDMI where the sink declares no more: HDMI 1.3a §8.3. */
    public static final Frequency UNDECLARED_MAXIMUM = Frequency.ofHz(165_000_000);

    private static final Rule CONVERTER = new Rule(
            "link.clock-exceeds-converter",
            Stage.CONVERTER,
            REFUSAL,
            "The pixel clock must not exceed the greatest clock of the converter's output.",
            "declared facts; 165 MHz where not stated: HDMI 1.3a §8.3");
    private static final Rule LEAST = new Rule(
            "link.clock-below-minimum",
            Stage.CONVERTER,
            REFUSAL,
            "A digital link carries at least 25 Mpixel/s; slower rasters are sent with repeated pixels.",
            "HDMI 1.3a §6.4; DVI 1.0 (from memory)");
    private static final Rule DISPLAY = new Rule(
            "link.clock-exceeds-display",
            Stage.DISPLAY_INPUT,
            REFUSAL,
            "A source must not exceed the greatest clock that the display declares; 165 MHz where it declares none.",
            "HDMI 1.3a §8.3");

    static final List<Rule> ALL = List.of(CONVERTER, LEAST, DISPLAY);

    private LinkClockRules() {}

    public static Optional<Refusal> converter(Frequency clock, Frequency greatest) {
        return clock.compareTo(greatest) <= 0
                ? Optional.empty()
                : Optional.of(refusal(CONVERTER, clock, greatest, "fewer samples or a smaller raster would help"));
    }

    public static Optional<Refusal> least(Frequency clock) {
        return clock.compareTo(LEAST_PIXEL_RATE) >= 0
                ? Optional.empty()
                : Optional.of(refusal(
                        LEAST, clock, LEAST_PIXEL_RATE, "more samples per line or a converter that repeats pixels"));
    }

    public static Optional<Refusal> display(Frequency clock, Frequency greatest) {
        return clock.compareTo(greatest) <= 0
                ? Optional.empty()
                : Optional.of(refusal(DISPLAY, clock, greatest, "fewer samples or a smaller raster would help"));
    }

    private static Refusal refusal(Rule rule, Frequency clock, Frequency limit, String help) {
        return new Refusal(
                rule,
                clock.hz(),
                limit.hz(),
                "Hz",
                clock.hz().toSixDigits().toPlainString() + " Hz pixel clock against "
                        + limit.hz().toSixDigits().toPlainString() + " Hz; " + help + ".");
    }
}
