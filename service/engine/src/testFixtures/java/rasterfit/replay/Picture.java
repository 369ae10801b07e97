package rasterfit.replay;

import static rasterfit.Fractions.fraction;

import java.util.Objects;
import org.apache.commons.numbers.fraction.BigFraction;
import rasterfit.gear.Mode;
import rasterfit.match.Settings;
import rasterfit.sim.ResampleSim;
import rasterfit.sim.ResampleSim.Lines;
import rasterfit.sim.ResampleSim.Placement;
import rasterfit.sim.ResampleSim.Sampling;

/**
 * The picture of a mode, sent through all stages as numbered dots and numbered frame lines.
 *
 * @param screen on which the raster is laid
 */
record Picture(Axis columns, Axis rows, Screen screen, BigFraction panelColumnsPerCell, BigFraction panelRowsPerCell) {

    /** Sends the mode's dots and lines. */
    static Picture of(Group group, Mode mode, Simulated simulated) {
        Sampling sampling = group.isDrawn() ? captured(group, mode) : passing(group, mode);
        Placement across = group.isDrawn() ? drawnAcross(group) : passingAcross(group, sampling);
        Lines lines = lines(group, mode);
        Placement down = group.isDrawn() ? drawnDown(group) : passingDown(group);
        Screen screen = Screen.of(
                group.chain(),
                group.setting().settings().aspectControl(),
                across.rasterColumns(),
                down.rasterColumns(),
                group.signalledAspect());
        boolean dotsCount = screen.hasGrid() && (group.isDrawn() || group.chain().endsDigital());
        return new Picture(
                new Axis(simulated.dots(sampling, across, screen.columns()), dotsCount),
                new Axis(simulated.lines(lines, down, screen.rows()), screen.hasGrid()),
                screen,
                perCell(screen.columns()),
                perCell(screen.rows()));
    }

    /** The digitiser's samples of the captured stretch; a digital line is taken dot by dot. */
    private static Sampling captured(Group group, Mode mode) {
        Settings settings = group.setting().settings();
        BigFraction leadDotsPerLine = fraction(group.lead().dotsPerLine());
        Integer samples = settings.samplesPerLine();
        BigFraction samplesPerLine = samples == null ? fraction(mode.dotsPerLine()) : BigFraction.of(samples);
        return sampling(
                mode,
                samplesPerLine,
                fraction(Objects.requireNonNull(settings.captureFirstDot())).divide(leadDotsPerLine),
                fraction(Objects.requireNonNull(settings.captureDots())).divide(leadDotsPerLine));
    }

    /** The stretch that is visible of a line that nobody samples. */
    private static Sampling passing(Group group, Mode mode) {
        BigFraction own = group.right().subtract(group.left());
        BigFraction width = group.isBroadcastPicture() ? group.broadcastWidth() : own;
        return sampling(
                mode,
                fraction(mode.dotsPerLine()),
                group.left().add(own.subtract(width).divide(2)),
                width);
    }

    private static Sampling sampling(Mode mode, BigFraction samplesPerLine, BigFraction left, BigFraction width) {
        return new Sampling(
                fraction(mode.dotsPerLine()),
                BigFraction.of(mode.active().firstDot()),
                mode.active().dots(),
                samplesPerLine,
                left,
                width.multiply(samplesPerLine));
    }

    private static Placement drawnAcross(Group group) {
        Settings settings = group.setting().settings();
        return new Placement(
                Objects.requireNonNull(settings.pictureWidth()),
                Objects.requireNonNull(settings.pictureLeft()),
                group.setting().outputTiming().horizontalActive());
    }

    /** One column for all of an analog line, or one for every dot of a digital one. */
    private static Placement passingAcross(Group group, Sampling sampling) {
        int columns = group.isBroadcastPicture()
                ? 1
                : sampling.windowSamples().add(BigFraction.of(1, 2)).intValue();
        return new Placement(columns, 0, columns);
    }

    private static Lines lines(Group group, Mode mode) {
        Settings settings = group.setting().settings();
        int first = group.isDrawn() ? Objects.requireNonNull(settings.firstLine()) : group.firstLine();
        int kept = group.isDrawn() ? Objects.requireNonNull(settings.lines()) : group.lines();
        int fields = group.fields();
        return new Lines(mode.frameLines(), (first - mode.active().firstLine()) * fields, kept * fields);
    }

    private static Placement drawnDown(Group group) {
        Settings settings = group.setting().settings();
        return new Placement(
                Objects.requireNonNull(settings.pictureHeight()),
                Objects.requireNonNull(settings.pictureTop()),
                group.setting().outputTiming().verticalActive());
    }

    private static Placement passingDown(Group group) {
        int rows = group.lines() * group.fields();
        return group.isBroadcastPicture()
                ? new Placement(rows, (group.broadcastLines() - rows) / 2, group.broadcastLines())
                : new Placement(rows, 0, rows);
    }

    private static BigFraction perCell(ResampleSim.Panel panel) {
        return BigFraction.of(panel.columns()).divide(panel.length());
    }
}
