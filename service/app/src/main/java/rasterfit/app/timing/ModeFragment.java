package rasterfit.app.timing;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.LineStandard;
import rasterfit.identify.Picture;
import rasterfit.identify.SourceTiming;
import rasterfit.timing.Scan;

/**
 * A mode as a gear document writes it, as far as it is known.
 *
 * @param name made of the counts; better replaced by one that the owner knows the mode by
 * @param active as far as it was counted; absent if nothing of it was
 */
record ModeFragment(
        String name,
        LineStandard lineStandard,
        String dotClockHz,
        String dotsPerLine,
        String linesPerField,
        Scan scan,
        @Nullable ActiveFragment active) {

    record ActiveFragment(
            @Nullable Integer dots,
            @Nullable Integer lines,
            @Nullable Integer firstDot,
            @Nullable Integer firstLine) {}

    static ModeFragment of(SourceTiming timing, Picture picture) {
        String dots = picture.dots() == null
                ? timing.dotsPerLine() + " dots a line"
                : picture.dots() + " dots drawn of " + timing.dotsPerLine();
        return new ModeFragment(
                dots + ", " + timing.linesPerField() + " lines a field",
                timing.lineStandard(),
                timing.dotClock().hz().toString(),
                timing.dotsPerLine().toString(),
                timing.linesPerField().toString(),
                timing.scan(),
                picture.equals(Picture.UNKNOWN)
                        ? null
                        : new ActiveFragment(picture.dots(), picture.lines(), picture.firstDot(), picture.firstLine()));
    }

    /** What a gear document requires beside this, as paths. */
    List<String> toAdd() {
        if (active == null) {
            return List.of("active");
        }
        List<String> missing = new ArrayList<>();
        addIfAbsent(missing, "active/dots", active.dots);
        addIfAbsent(missing, "active/lines", active.lines);
        addIfAbsent(missing, "active/firstDot", active.firstDot);
        addIfAbsent(missing, "active/firstLine", active.firstLine);
        return missing;
    }

    private static void addIfAbsent(List<String> missing, String path, @Nullable Integer value) {
        if (value == null) {
            missing.add(path);
        }
    }
}
