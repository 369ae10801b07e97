package rasterfit.sim;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * Sample-by-sample simulation of a converter that sends each source line several times at as many times the line rate.
 * The first copy chases the arriving line: it may begin as soon as none of its samples would leave before the same
 * sample has arrived. Times are exact fractions of the source line period H.
 *
 * <p>A finite number of samples makes the start later than an ideal endless division of the line would by at most one
 * emitted sample, H / (samples x copies): a sample can be sent on only when it has wholly arrived.
 */
public final class LineRepeatSim {
    private LineRepeatSim() {}

    /**
     * What is repeated.
     *
     * @param samples samples in one whole source line, blanking included, arriving at an even pace
     * @param firstActive samples before the first that is stored
     * @param active samples stored; blanking is made anew by the converter, in the same proportion
     * @param copies times that each line is sent, at that many times the line rate
     */
    public record Repeat(int samples, int firstActive, int active, int copies) {
        public Repeat {
            if (active < 1 || firstActive < 0 || firstActive + active > samples || copies < 1) {
                throw new IllegalArgumentException("the active samples must lie in the line, copies from 1 up");
            }
        }
    }

    /**
     * Result.
     *
     * @param start least time from the start of a source line to the start of its first copy, in H
     * @param copyLatencies the same for each copy in turn, in H
     * @param mean mean of the copies' latencies, in H
     * @param peakSamples most samples held at one time, a sample being held from the moment it begins to arrive until
     *     its last copy has wholly left
     */
    public record Outcome(BigFraction start, List<BigFraction> copyLatencies, BigFraction mean, int peakSamples) {}

    /** Simulates endless lines, one after another. One tick is one emitted sample, H / (samples x copies). */
    public static Outcome repeat(Repeat in) {
        int start = leastStart(in);
        int line = in.samples * in.copies;
        List<BigFraction> latencies = IntStream.range(0, in.copies)
                .mapToObj(copy -> BigFraction.of(start + copy * in.samples, line))
                .toList();
        BigFraction sum = latencies.stream().reduce(BigFraction.ZERO, BigFraction::add);
        return new Outcome(BigFraction.of(start, line), latencies, sum.divide(in.copies), peakSamples(in, start));
    }

    /** Steps through the samples with the start as it is, and begins anew one tick later whenever one is missing. */
    private static int leastStart(Repeat in) {
        int start = 0;
        int sample = in.firstActive;
        while (sample < in.firstActive + in.active) {
            int arrived = (sample + 1) * in.copies;
            int leaves = start + sample;
            if (leaves < arrived) {
                start++;
                sample = in.firstActive;
            } else {
                sample++;
            }
        }
        return start;
    }

    /**
     * Most whole lines held at one time when the first copy of every line begins so many lines after the line itself: a
     * line takes a place when it begins to arrive and gives it up when its last copy has wholly left. The copies of a
     * line leave within the time of one line.
     *
     * @param start from the start of a source line to the start of its first copy, in H; not negative
     */
    public static int peakLines(BigFraction start) {
        int most = 0;
        int newest = 2 * start.intValue() + 4; // long after the first line has left
        for (int line = 0; line <= newest; line++) {
            BigFraction leaves = BigFraction.of(line).add(start).add(BigFraction.ONE);
            most += leaves.compareTo(BigFraction.of(newest)) > 0 ? 1 : 0; // a place is free again at that very moment
        }
        return most;
    }

    private record Change(int time, int places) {}

    private static int peakSamples(Repeat in, int start) {
        List<Change> changes = new ArrayList<>();
        for (int line = 0; line < 5; line++) { // a sample lives less than two lines: five lines show the steady state
            int lineStart = line * in.samples * in.copies;
            for (int sample = in.firstActive; sample < in.firstActive + in.active; sample++) {
                int lastCopy = start + (in.copies - 1) * in.samples + sample;
                changes.add(new Change(lineStart + sample * in.copies, 1));
                changes.add(new Change(lineStart + lastCopy + 1, -1));
            }
        }
        changes.sort(Comparator.comparingInt(Change::time).thenComparingInt(Change::places));
        int held = 0;
        int peak = 0;
        for (Change change : changes) {
            held += change.places;
            peak = Math.max(peak, held);
        }
        return peak;
    }
}
