package rasterfit.upkeep;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.DisplayTest;
import rasterfit.gear.OwnEvidence;
import rasterfit.gear.OwnEvidence.OwnReading;

/**
 * What an owner found out about a display, put on its inputs.
 *
 * @param display with the evidence on every input and menu state for which it holds
 * @param unplaced what names an input or state that the display does not have, in words
 */
public record DisplayEvidence(Display display, List<String> unplaced) {
    public DisplayEvidence {
        unplaced = List.copyOf(unplaced);
    }

    /**
     * Puts readings and tests where they belong, newest first; of one day, the one that comes later in its list counts as
     * the newer. Readings are not pooled: what was read on different days may have been read with other settings, and
     * repetitions of one sitting belong into one reading.
     *
     * @param firmware that the display has now; absent: tests hold whatever firmware they name
     */
    public static DisplayEvidence apply(
            Display display, @Nullable String firmware, List<InputReading> readings, List<InputTest> tests) {
        List<String> unplaced = new ArrayList<>();
        for (InputReading reading : readings) {
            if (display.inputs().stream().noneMatch(input -> isAt(input, reading.input(), reading.state()))) {
                unplaced.add("A lag reading of " + reading.on() + " names " + path(reading.input(), reading.state()));
            }
        }
        for (InputTest test : tests) {
            if (display.inputs().stream().noneMatch(input -> isAt(input, test.input(), test.state()))) {
                unplaced.add("A test of " + test.test().on() + " names " + path(test.input(), test.state()));
            }
        }
        List<DisplayInput> inputs = display.inputs().stream()
                .map(input -> input.with(evidence(input, firmware, readings, tests)))
                .toList();
        return new DisplayEvidence(display.with(inputs), unplaced);
    }

    private static OwnEvidence evidence(
            DisplayInput input, @Nullable String firmware, List<InputReading> readings, List<InputTest> tests) {
        List<InputReading> here = readings.stream()
                .filter(reading -> isAt(input, reading.input(), reading.state()))
                .toList();
        List<DisplayTest> tried = tests.stream()
                .filter(test -> isAt(input, test.input(), test.state()))
                .map(InputTest::test)
                .toList();
        if (here.isEmpty() && tried.isEmpty()) {
            return OwnEvidence.NONE;
        }
        List<DisplayTest> newestFirst = newestFirst(tried, Comparator.comparing(DisplayTest::on));
        return new OwnEvidence(
                newestFirst(here, Comparator.comparing(InputReading::on)).stream()
                        .map(DisplayEvidence::own)
                        .toList(),
                newestFirst.stream().filter(test -> holds(test, firmware)).toList(),
                newestFirst.stream().filter(test -> !holds(test, firmware)).toList());
    }

    private static OwnReading own(InputReading reading) {
        LagMeasurement measurement = reading.measurement();
        return new OwnReading(
                LagStatistics.of(measurement).reading(),
                reading.on(),
                measurement.framesCounted().size());
    }

    private static <T> List<T> newestFirst(List<T> list, Comparator<T> byDay) {
        List<T> sorted = new ArrayList<>(list);
        Collections.reverse(sorted);
        sorted.sort(byDay.reversed());
        return sorted;
    }

    private static boolean isAt(DisplayInput input, String id, @Nullable String state) {
        return input.id().equals(id) && (state == null || state.equals(input.state()));
    }

    private static boolean holds(DisplayTest test, @Nullable String firmware) {
        return firmware == null || test.firmware() == null || firmware.equals(test.firmware());
    }

    private static String path(String input, @Nullable String state) {
        return "input " + (state == null ? input : input + "/" + state);
    }
}
