package rasterfit.gear;

import java.util.List;

/** The sample counts per line that can be set. */
public sealed interface SamplesPerLine {
    boolean allows(int samples);

    record FreeRange(int min, int max) implements SamplesPerLine {
        public FreeRange {
            if (min <= 0 || min > max) {
                throw new IllegalArgumentException("samples per line need 0 < min <= max");
            }
        }

        @Override
        public boolean allows(int samples) {
            return samples >= min && samples <= max;
        }
    }

    record FixedList(List<Integer> values) implements SamplesPerLine {
        public FixedList {
            values = values.stream().distinct().sorted().toList();
            if (values.isEmpty() || values.get(0) <= 0) {
                throw new IllegalArgumentException("a list of samples per line holds positive counts");
            }
        }

        @Override
        public boolean allows(int samples) {
            return values.contains(samples);
        }
    }
}
