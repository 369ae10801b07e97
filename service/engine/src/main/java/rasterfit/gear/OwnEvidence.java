package rasterfit.gear;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What the owner of a display found out about one of its inputs, newest first. It goes before what anybody else says of
 * the display.
 *
 * @param tests those that still hold
 * @param outdated those made with another firmware than the display has now: told, but nothing is decided by them
 */
public record OwnEvidence(List<OwnReading> readings, List<DisplayTest> tests, List<DisplayTest> outdated) {
    public static final OwnEvidence NONE = new OwnEvidence(List.of(), List.of(), List.of());

    /**
     * Display lag that the owner read.
     *
     * @param repetitions how often it was read
     */
    public record OwnReading(LagReading reading, LocalDate on, int repetitions) {
        /** Whether it only bounds the lag from above, since it holds the console's own delay too. */
        public boolean isBound() {
            return reading.method() == LagReading.Method.PRESS_TO_LIGHT;
        }
    }

    public OwnEvidence {
        readings = List.copyOf(readings);
        tests = List.copyOf(tests);
        outdated = List.copyOf(outdated);
    }

    /**
     * The reading that counts for a timing: one made at this very timing before one for any, then the newest.
     *
     * @param label under which the timing is listed; may be empty
     * @param bound whether a bound is looked for, or a reading of the lag itself
     */
    public Optional<OwnReading> reading(String label, boolean bound) {
        return readings.isEmpty() ? Optional.empty() : find(label, bound).or(() -> find(null, bound));
    }

    private Optional<OwnReading> find(@Nullable String timing, boolean bound) {
        return readings.stream()
                .filter(own -> own.isBound() == bound)
                .filter(own -> timing == null
                        ? own.reading().timing() == null
                        : timing.equals(own.reading().timing()))
                .findFirst();
    }
}
