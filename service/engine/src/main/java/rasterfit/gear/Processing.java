package rasterfit.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** One way in which a converter can make its output from its input. */
public sealed interface Processing {
    String id();

    /** Fixed delay of the electronics in microseconds. */
    Fact pipelineUs();

    /** The same with another such delay. */
    Processing withPipelineUs(Fact other);

    /** The raster stays; format or link changes. */
    record FormatOnly(String id, Fact pipelineUs) implements Processing {
        @Override
        public Processing withPipelineUs(Fact other) {
            return new FormatOnly(id, other);
        }
    }

    /**
     * Every line is sent several times at a multiple of the line rate; the field rate stays the source's.
     *
     * @param samplesPerLine counts that this processing can carry; absent: those of the digitiser
     * @param latestStartLines lines after which the first copy begins; unknown where not stated
     * @param bufferLines lines of memory; absent where not stated
     */
    record LineRepeat(
            String id,
            List<LineCounts> lines,
            SamplesPerLine.@Nullable FreeRange samplesPerLine,
            Fact latestStartLines,
            @Nullable Integer bufferLines,
            InterlacedFields interlaced,
            Fact pipelineUs)
            implements Processing {
        public LineRepeat {
            lines = List.copyOf(lines);
        }

        @Override
        public Processing withPipelineUs(Fact other) {
            return new LineRepeat(id, lines, samplesPerLine, latestStartLines, bufferLines, interlaced, other);
        }

        /** The same with another latest start. */
        public LineRepeat withLatestStartLines(Fact other) {
            return new LineRepeat(id, lines, samplesPerLine, other, bufferLines, interlaced, pipelineUs);
        }
    }

    /** The picture is written into memory and read out into another raster. */
    record RasterScale(
            String id,
            List<OfferedTiming> timings,
            ScaleAxis vertical,
            ScaleAxis horizontal,
            List<Deinterlacer> deinterlacers,
            List<RateLock> rateLocks,
            Fact pipelineUs)
            implements Processing {
        public RasterScale {
            timings = List.copyOf(timings);
            deinterlacers = List.copyOf(deinterlacers);
            rateLocks = List.copyOf(rateLocks);
        }

        @Override
        public Processing withPipelineUs(Fact other) {
            return new RasterScale(id, timings, vertical, horizontal, deinterlacers, rateLocks, other);
        }

        /** The same with other deinterlacers. */
        public RasterScale withDeinterlacers(List<Deinterlacer> others) {
            return new RasterScale(id, timings, vertical, horizontal, others, rateLocks, pipelineUs);
        }
    }

    /** Line counts per field that can be made of one input class. */
    record LineCounts(LineStandard lineStandard, int from, List<Integer> to) {
        public LineCounts {
            to = List.copyOf(to);
            for (int count : to) {
                if (from <= 0 || count < from || count % from != 0) {
                    throw new IllegalArgumentException(count + " lines are not a whole multiple of " + from);
                }
            }
        }
    }

    /** What line repetition does with the two fields of an interlaced source. */
    enum InterlacedFields {
        /** Both fields on the same output lines. */
        FIELD_ON_FIELD,
        /** The second field half of a repeated line group lower. */
        FIELD_SHIFTED,
        REFUSED
    }
}
