package rasterfit.app.collection;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.Range;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayTest;
import rasterfit.timing.Raster;
import rasterfit.upkeep.InputReading;
import rasterfit.upkeep.InputTest;
import rasterfit.upkeep.LagMeasurement;

/** Reads what was measured and tried at the inputs of owned displays. */
final class FindingsReader {
    private static final Range FRAMES_PER_SECOND = Range.of("1", "100000", "frames per second");
    private static final Range FRAMES = Range.of("0", "1000000", "frames");
    private static final Range ROW = Range.of("0", "32768", "rows");
    private static final Range SIZE = Range.of("1", "32768", "pixels or lines");
    private static final Range CLOCK = Range.of("1000", "10000000000", "Hz");
    private static final int MOST_COUNTS = 1000;

    private final Contents contents;

    FindingsReader(Contents contents) {
        this.contents = contents;
    }

    /** Notes what is wrong, the names of display and input included. */
    void check(Place at, LagReadingBody body) {
        input(at, body.item(), body.input(), body.state());
        reading(at, body);
    }

    /** Notes what is wrong, the names of display and input included. */
    void check(Place at, TestResultBody body) {
        input(at, body.item(), body.input(), body.state());
        test(at, body);
    }

    /** What was measured, whatever became of the display. Null where something is wrong, which is noted. */
    static @Nullable InputReading reading(Place at, LagReadingBody body) {
        Days.check(at.member("on"), body.on());
        at.member("note").optionalText(body.note());
        String timing = body.timing();
        if (timing != null) {
            GearReader.numberedTiming(at.member("timing"), timing);
        }
        var rate = at.member("cameraFramesPerSecond").exact(body.cameraFramesPerSecond(), FRAMES_PER_SECOND);
        List<Integer> counts = at.member("framesCounted")
                .each(body.framesCounted(), 1, MOST_COUNTS, (place, count) -> place.count(count, FRAMES));
        Integer row = at.member("referenceRow").optionalCount(body.referenceRow(), ROW);
        return at.make(() -> new InputReading(
                body.input(), body.state(), body.on(), new LagMeasurement(timing, body.method(), row, rate, counts)));
    }

    /** What was tried, whatever became of the display. Null where something is wrong, which is noted. */
    static @Nullable InputTest test(Place at, TestResultBody body) {
        Days.check(at.member("on"), body.on());
        at.member("firmware").optionalText(body.firmware());
        at.member("note").optionalText(body.note());
        Raster raster = null;
        if ((body.timing() == null) == (body.raster() == null)) {
            at.wrongForm("What was shown is named by timing, or described by raster.");
        } else if (body.timing() != null) {
            raster = GearReader.numberedTiming(at.member("timing"), body.timing());
        } else if (body.raster() != null) {
            raster = raster(at.member("raster"), body.raster());
        }
        Raster shown = raster;
        return at.make(() -> new InputTest(
                body.input(),
                body.state(),
                new DisplayTest(Objects.requireNonNull(shown), body.outcome(), body.firmware(), body.on())));
    }

    private static @Nullable Raster raster(Place at, RasterBody body) {
        var clock = at.member("pixelClockHz").frequency(body.pixelClockHz(), CLOCK);
        int columns = at.member("horizontalActive").count(body.horizontalActive(), SIZE);
        var samples = at.member("horizontalTotal").number(body.horizontalTotal(), SIZE);
        int rows = at.member("verticalActive").count(body.verticalActive(), SIZE);
        var lines = at.member("verticalTotal").number(body.verticalTotal(), SIZE);
        return at.make(() -> new Raster(clock, columns, samples, rows, lines, body.scan()));
    }

    private void input(Place at, String itemId, String input, @Nullable String state) {
        OwnItem item = contents.items().get(itemId);
        Display display = item == null ? null : item.display();
        if (item == null || display == null) {
            at.member("item").invalid("The collection has no display with this id.");
            return;
        }
        List<String> states = new ArrayList<>();
        boolean isThere = false;
        for (var one : display.inputs()) {
            if (one.id().equals(input)) {
                isThere = true;
                if (one.state() != null) {
                    states.add(one.state());
                }
            }
        }
        if (!isThere) {
            at.member("input")
                    .invalid("The display has no input with this id; it has " + String.join(", ", item.portNames(false))
                            + ".");
        } else if (state != null && !states.contains(state)) {
            at.member("state")
                    .invalid("The input has no such menu state"
                            + (states.isEmpty() ? "." : "; it has " + String.join(", ", states) + "."));
        }
    }
}
