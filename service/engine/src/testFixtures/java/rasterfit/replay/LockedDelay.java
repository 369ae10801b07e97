package rasterfit.replay;

import static rasterfit.Fractions.fraction;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import org.apache.commons.numbers.fraction.BigFraction;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.match.LatencyFigure;
import rasterfit.match.Settings;
import rasterfit.sim.LineBufferSim.Bob;
import rasterfit.sim.LineBufferSim.BobOutcome;
import rasterfit.sim.LineBufferSim.Latencies;
import rasterfit.sim.LineBufferSim.Locked;
import rasterfit.sim.LineBufferSim.Outcome;
import rasterfit.sim.LineBufferSim.RowLatency;
import rasterfit.sim.Scan;
import rasterfit.timing.RasterTiming;

/** A scaler in step with its source: lines go into a memory and rows are read from it. */
record LockedDelay(Group group, Mode mode, Processing.RasterScale scale, Simulated simulated) {

    /** Rows of each kind of field, latencies in field periods. */
    private record Played(List<Latencies> fields, int peakLines) {
        BigFraction extreme(Function<Latencies, BigFraction> of, Comparator<BigFraction> order) {
            return fields.stream().map(of).max(order).orElseThrow();
        }

        /** Of the later field. */
        BigFraction atLine(int line) {
            return extreme(field -> firstRowFrom(line, field.rows()).latency(), Comparator.naturalOrder());
        }

        /** The first row that stands for a line, or for one below it where a reduced picture shows it nowhere. */
        private static RowLatency firstRowFrom(int line, List<RowLatency> rows) {
            return rows.stream()
                    .filter(row -> row.ownLine() >= line)
                    .findFirst()
                    .orElse(rows.get(rows.size() - 1));
        }
    }

    Delay measure() {
        Played played = play();
        int lines = Objects.requireNonNull(group.setting().settings().lines());
        BigFraction fieldMs = Delay.fieldMs(mode);
        Map<LatencyFigure, BigFraction> ms = Delay.figures(
                played.atLine(0).multiply(fieldMs),
                played.atLine(lines / 2).multiply(fieldMs),
                played.atLine(lines - 1).multiply(fieldMs),
                played.extreme(Latencies::least, Comparator.reverseOrder()).multiply(fieldMs),
                played.extreme(Latencies::greatest, Comparator.naturalOrder()).multiply(fieldMs));
        int taps = scale.vertical().taps();
        int behind = Math.max(0, taps / 2 - 1);
        int stored = storedFieldLines();
        // The definition counts taps/2 − 1 lines behind the row's own; some filters reach one further back.
        int furtherBack = taps == 1 ? 0 : 1;
        return new Delay(
                Delay.withStated(ms, group, mode, scale),
                ringLines(played) + behind + stored,
                played.peakLines() - furtherBack + stored,
                null);
    }

    private Played play() {
        Settings settings = group.setting().settings();
        RasterTiming timing = group.offered(scale).timing();
        int firstLine = Objects.requireNonNull(settings.firstLine());
        int lines = Objects.requireNonNull(settings.lines());
        int firstRow = timing.firstActiveLine() + Objects.requireNonNull(settings.pictureTop());
        int rows = Objects.requireNonNull(settings.pictureHeight());
        int taps = scale.vertical().taps();
        BigFraction sourceLines = fraction(mode.linesPerField());
        if (mode.isInterlaced()) {
            BobOutcome bob = simulated.bob(new Bob(
                    sourceLines, firstLine, lines, timing.verticalTotal(), firstRow, rows, taps, Scan.BOB_TOP_EDGE));
            return new Played(List.of(bob.topField(), bob.bottomField()), bob.peakLines());
        }
        Outcome outcome = simulated.locked(
                new Locked(sourceLines, firstLine, lines, timing.verticalTotal(), firstRow, rows, taps));
        return new Played(List.of(outcome.latencies()), outcome.peakLines());
    }

    /**
     * The memory as a ring into which every line is written in turn, blank ones too: so many lines after a line began to
     * arrive, its place is overwritten. The least ring in which every row has wholly left before that.
     */
    private int ringLines(Played played) {
        BigFraction line = BigFraction.ONE.divide(fraction(mode.linesPerField()));
        BigFraction row = BigFraction.of(1, group.offered(scale).timing().verticalTotal());
        int ring = 1;
        for (Latencies field : played.fields()) {
            for (RowLatency each : field.rows()) {
                BigFraction rowHasLeft = each.latency().add(row);
                while (line.multiply(ring).subtract(rowHasLeft).signum() < 0) {
                    ring++;
                }
            }
        }
        return ring;
    }

    /** Weaving and motion adaptation look at the field before, which must be kept whole. */
    private int storedFieldLines() {
        Deinterlacer deinterlacer = Delay.deinterlacer(group);
        return deinterlacer == null || deinterlacer.kind() == Deinterlacer.Kind.BOB
                ? 0
                : (int) mode.linesPerField().ceil();
    }
}
