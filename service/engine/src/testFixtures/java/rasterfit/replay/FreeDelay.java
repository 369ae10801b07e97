package rasterfit.replay;

import static rasterfit.Fractions.fraction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.numbers.fraction.BigFraction;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.match.LatencyFigure;
import rasterfit.match.Settings;
import rasterfit.sim.FreeRunSim;
import rasterfit.sim.FreeRunSim.Setup;
import rasterfit.sim.FreeRunSim.Spread;
import rasterfit.sim.LinePicker;
import rasterfit.sim.Scan;
import rasterfit.timing.RasterTiming;

/**
 * A scaler with a clock of its own. What it shows is older or newer by chance, so the two ends of chance are played: an
 * output frame that begins to read at the very moment at which a field (or line) is complete, and one that begins just
 * before the next one is. The latency of a row grows with age as time does, so the ends are exact once the little that
 * "just before" left out is added again.
 */
record FreeDelay(Group group, Mode mode, Processing.RasterScale scale, Simulated simulated) {
    /** Late enough that the first observed frame finds a complete field at any pair of rates from 1 : 4 to 4 : 1. */
    private static final int WATCHED_FIELD = 10;

    Delay measure() {
        int stores = freeRunning().fieldStores();
        Map<LatencyFigure, BigFraction> seconds = stores == 1 ? singleStore() : wholeFields();
        seconds.replaceAll((figure, value) -> value.multiply(1000));
        return new Delay(Delay.withStated(seconds, group, mode, scale), null, 0, stores);
    }

    /** The lock that runs at the chosen rate; without rates of its own it runs at that of the timing. */
    private RateLock.FreeRunning freeRunning() {
        return scale.rateLocks().stream()
                .filter(RateLock.FreeRunning.class::isInstance)
                .map(RateLock.FreeRunning.class::cast)
                .filter(free -> free.rates().isEmpty()
                        || free.rates().contains(group.setting().settings().outputFieldRate()))
                .findFirst()
                .orElseThrow();
    }

    /** Two or more fields are kept; a frame takes the newest complete one. */
    private Map<LatencyFigure, BigFraction> wholeFields() {
        // Fields of an interlaced source follow each other by half a line more and less than their period in turn, which
        // the definition of age leaves out; staying clear of that by a line leaves it out here too.
        BigFraction shortOfNext = mode.isInterlaced() ? line() : row().divide(2);
        List<BigFraction> tops = new ArrayList<>();
        List<BigFraction> middles = new ArrayList<>();
        List<BigFraction> bottoms = new ArrayList<>();
        List<BigFraction> leasts = new ArrayList<>();
        List<BigFraction> greatests = new ArrayList<>();
        for (int kind = 0; kind < (mode.isInterlaced() ? 2 : 1); kind++) {
            BigFraction complete = arrived(WATCHED_FIELD + kind, lines() - 1);
            Spread young = simulated
                    .wholeFields(playing(0, complete, BigFraction.ZERO))
                    .fresh();
            Spread old = simulated
                    .wholeFields(playing(0, complete, greatestAge().subtract(shortOfNext)))
                    .fresh();
            int[] own = new LinePicker(lines(), rows(), 1, scan(), kind == 1).ownLines();
            tops.add(meanAge(young, old, shortOfNext, firstRowFrom(0, own)));
            middles.add(meanAge(young, old, shortOfNext, firstRowFrom(lines() / 2, own)));
            bottoms.add(meanAge(young, old, shortOfNext, firstRowFrom(lines() - 1, own)));
            leasts.add(young.least());
            greatests.add(old.greatest().add(shortOfNext));
        }
        return Delay.figures(later(tops), later(middles), later(bottoms), sooner(leasts), later(greatests));
    }

    /**
     * One store with a place for each line, which the next field overwrites. The fields of an interlaced source share the
     * places; that they come by half a line earlier and later in turn is left out, as above.
     */
    private Map<LatencyFigure, BigFraction> singleStore() {
        int[] own = new LinePicker(lines(), rows(), 1, Scan.PROGRESSIVE, false).ownLines();
        BigFraction shortOfNext = row().divide(2);
        List<BigFraction> atMeanAge = new ArrayList<>();
        List<BigFraction> leasts = new ArrayList<>();
        List<BigFraction> greatests = new ArrayList<>();
        for (int line : new int[] {0, lines() / 2, lines() - 1}) {
            int row = firstRowFrom(line, own);
            BigFraction complete = arrived(WATCHED_FIELD, own[row]);
            Spread young = simulated
                    .singleStore(playing(row, complete, BigFraction.ZERO))
                    .fresh();
            Spread old = simulated
                    .singleStore(playing(row, complete, greatestAge().subtract(shortOfNext)))
                    .fresh();
            atMeanAge.add(meanAge(young, old, shortOfNext, row));
            leasts.add(young.least());
            greatests.add(old.greatestByRow().get(row).add(shortOfNext));
        }
        return Delay.figures(
                atMeanAge.get(0), atMeanAge.get(1), atMeanAge.get(2), sooner(leasts), later(greatests));
    }

    /** Two output frames, of which the second begins its given row so long after a moment. */
    private Setup playing(int row, BigFraction moment, BigFraction age) {
        RasterTiming timing = timing();
        int firstRow = timing.firstActiveLine() + Objects.requireNonNull(settings().pictureTop());
        BigFraction secondFrame = moment.add(age).subtract(row().multiply(firstRow + row));
        return new Setup(
                period(),
                fraction(mode.linesPerField()),
                Objects.requireNonNull(settings().firstLine()),
                lines(),
                freeRunning().fieldStores() == 1 ? Scan.PROGRESSIVE : scan(),
                framePeriod(),
                timing.verticalTotal(),
                firstRow,
                rows(),
                firstRow,
                secondFrame.subtract(framePeriod()),
                2);
    }

    private static BigFraction meanAge(Spread young, Spread old, BigFraction shortOfNext, int row) {
        BigFraction oldest = old.leastByRow().get(row).add(shortOfNext);
        return young.leastByRow().get(row).add(oldest).divide(2);
    }

    /** When a kept line of a field has wholly arrived; bottom fields are half a line late. */
    private BigFraction arrived(int field, int keptLine) {
        int line = Objects.requireNonNull(settings().firstLine()) + keptLine + 1;
        boolean isLate = field % 2 != 0 && mode.isInterlaced() && freeRunning().fieldStores() > 1;
        BigFraction inField = line().multiply(line).add(isLate ? line().divide(2) : BigFraction.ZERO);
        return period().multiply(field).add(inField);
    }

    private static int firstRowFrom(int line, int[] own) {
        int row = 0;
        while (row < own.length - 1 && own[row] < line) {
            row++;
        }
        return row;
    }

    /** A field is shown no longer than until the next one is there, or until the next frame begins. */
    private BigFraction greatestAge() {
        return sooner(List.of(period(), framePeriod()));
    }

    private Scan scan() {
        return mode.isInterlaced() ? Scan.BOB_TOP_EDGE : Scan.PROGRESSIVE;
    }

    private Settings settings() {
        return group.setting().settings();
    }

    private RasterTiming timing() {
        return group.offered(scale).timing();
    }

    private int lines() {
        return Objects.requireNonNull(settings().lines());
    }

    private int rows() {
        return Objects.requireNonNull(settings().pictureHeight());
    }

    private BigFraction period() {
        return fraction(mode.fieldRate().hz()).reciprocal();
    }

    private BigFraction line() {
        return fraction(mode.lineRate().hz()).reciprocal();
    }

    private BigFraction framePeriod() {
        return fraction(Objects.requireNonNull(settings().outputFieldRate()).hz()).reciprocal();
    }

    private BigFraction row() {
        return framePeriod().divide(timing().verticalTotal());
    }

    private static BigFraction later(List<BigFraction> times) {
        return times.stream().max(Comparator.naturalOrder()).orElseThrow();
    }

    private static BigFraction sooner(List<BigFraction> times) {
        return times.stream().min(Comparator.naturalOrder()).orElseThrow();
    }
}
