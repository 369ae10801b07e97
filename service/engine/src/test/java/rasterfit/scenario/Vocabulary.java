package rasterfit.scenario;

import java.util.ArrayList;
import java.util.List;

/**
 * The facts that each part of the notation may state. Those that are waiting are read and kept, but the engine's records have
 * no place for them yet: whoever adds one maps it in the {@code GearOf...} class that is named here and moves the word from
 * the second list to the first. Until then a scenario that states one counts as not passed.
 *
 * @param mapped facts that the engine is given
 * @param waiting facts that it has no place for yet
 */
record Vocabulary(List<String> mapped, List<String> waiting) {
    /** {@link GearOfConsole}. */
    static final Vocabulary CONSOLE = new Vocabulary(List.of("price"), List.of());
    /** {@link GearOfConsole}. */
    static final Vocabulary CONSOLE_OUTPUT = new Vocabulary(
            List.of("bandwidth"),
            List.of("coupling", "setup-percent", "video-vpp", "channel", "protected", "sound", "sync"));
    /** {@link GearOfConsole}. */
    static final Vocabulary MODE = new Vocabulary(
            List.of("name", "share", "play", "clock", "dots", "lines", "active-lines", "shape"), List.of("irregular"));
    /** {@link GearOfConverter}. */
    static final Vocabulary CONVERTER = new Vocabulary(List.of("price", "resync-ms", "tune"), List.of());
    /** {@link GearOfConverter}. */
    static final Vocabulary CONVERTER_INPUT = new Vocabulary(
            List.of("line", "field", "scans", "half", "digitiser", "samples", "max-rate"),
            List.of("tolerates", "sound", "protection"));
    /** {@link GearOfConverter}. */
    static final Vocabulary CONVERTER_OUTPUT =
            new Vocabulary(List.of("maxclock", "repetition"), List.of("range", "sound"));
    /** {@link GearOfConverter}. */
    static final Vocabulary PASS = new Vocabulary(List.of("pipeline-us"), List.of());
    /** {@link GearOfConverter}. */
    static final Vocabulary REPEAT = new Vocabulary(List.of("interlaced", "pipeline-us"), List.of());
    /** {@link GearOfConverter}. */
    static final Vocabulary SCALE =
            new Vocabulary(List.of("lock", "taps", "crop", "factors", "deint", "pipeline-us"), List.of("matrix"));
    /** {@link GearOfDisplay}. */
    static final Vocabulary DISPLAY = new Vocabulary(List.of(), List.of());
    /** {@link GearOfDisplay}. */
    static final Vocabulary DISPLAY_INPUT = new Vocabulary(
            List.of(
                    "line",
                    "field",
                    "scans",
                    "half",
                    "lists",
                    "maxclock",
                    "aspects",
                    "lag",
                    "overscan",
                    "resync-ms",
                    "state"),
            List.of(
                    "tolerates",
                    "terminates",
                    "setup-percent",
                    "needs-pin16",
                    "chassis",
                    "channel",
                    "range",
                    "variable",
                    "field-store",
                    "protection"));
    /** {@link GearOfLink}. */
    static final Vocabulary LINK = new Vocabulary(
            List.of("price", "bandwidth", "delay-us", "ports"),
            List.of(
                    "capacitors-uf",
                    "pin8-volts",
                    "pin16-volts",
                    "video-pin-volts",
                    "terminates",
                    "maxclock",
                    "protection",
                    "sound"));

    Vocabulary {
        mapped = List.copyOf(mapped);
        waiting = List.copyOf(waiting);
    }

    boolean knows(String name) {
        return mapped.contains(name) || waiting.contains(name);
    }

    boolean waits(String name) {
        return waiting.contains(name);
    }

    List<String> names() {
        List<String> names = new ArrayList<>(mapped);
        names.addAll(waiting);
        return names;
    }
}
