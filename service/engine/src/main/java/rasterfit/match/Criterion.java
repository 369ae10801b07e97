package rasterfit.match;

import java.util.Optional;

/** What setups are judged by. The curves are our own documented defaults (assumption). */
public enum Criterion {
    DOT_UNIFORMITY(
            "dotUniformity",
            "",
            "clamp(2·least/greatest − 1)·(1 − softness) of dot widths, or clamp(2·least/greatest"
                    + " − 1) of line heights, the worse of both; 0 below one sample per dot"),
    ASPECT("aspect", "%", "1 up to 1 % of aspect error, falling linearly to 0 at 15 %"),
    COVERAGE(
            "coverage",
            "%",
            "min(1, drawn area ÷ greatest area at the intended aspect) × share of the really drawn picture that is not cut off"),
    MOTION(
            "motion",
            "1/s",
            "1/(1 + 4·dropped or repeated fields per second); ×0.5 for whole-frame output, ×0.7 with a tear"),
    LATENCY("latency", "ms", "2^(−total/16.7 ms) of the typical total"),
    ACCEPTANCE(
            "acceptance",
            "",
            "tested or listed 1, near-listed 0.9, within limits and continuous 0.85, not promised 0.5,"
                    + " larger than listed 0.15, limits unknown 0.1, outside 0.05; the worst mode counts"),
    LINK_DETAIL("linkDetail", "", "0.6·luma + 0.4·chroma detail ratio of the analog link; drops out on a digital one"),
    MODE_SWITCH_GAP(
            "modeSwitchGap",
            "s",
            "2^(−s/2) of the time without picture at a mode switch during play; drops out" + " without one"),
    EFFORT("effort", "changes", "1/(1 + changes/4) of the settings to tune"),
    COST(
            "cost",
            "EUR",
            "2^(−price/150) of the middle price still to pay, in units of its currency; drops out where nothing is priced");

    private final String id;
    private final String unit;
    private final String curve;

    Criterion(String id, String unit, String curve) {
        this.id = id;
        this.unit = unit;
        this.curve = curve;
    }

    public String id() {
        return id;
    }

    /** Unit of the value that the curve takes; empty for a pure number. */
    public String unit() {
        return unit;
    }

    public String curve() {
        return curve;
    }

    public static Optional<Criterion> byId(String id) {
        for (Criterion criterion : values()) {
            if (criterion.id.equals(id)) {
                return Optional.of(criterion);
            }
        }
        return Optional.empty();
    }
}
