package rasterfit.identify;

import rasterfit.quantity.Rational;

/** What can be read off an instrument or counted. */
public enum Measurand {
    LINE_RATE("lineRateHz", "Hz") {
        @Override
        public Rational of(SourceTiming timing) {
            return timing.lineRate().hz();
        }
    },
    LINE_PERIOD("linePeriodUs", "us") {
        @Override
        public Rational of(SourceTiming timing) {
            return timing.lineRate().period().seconds().times(1_000_000);
        }
    },
    FIELD_RATE("fieldRateHz", "Hz") {
        @Override
        public Rational of(SourceTiming timing) {
            return timing.fieldRate().hz();
        }
    },
    LINES_PER_FIELD("linesPerField", "lines") {
        @Override
        public Rational of(SourceTiming timing) {
            return timing.linesPerField();
        }
    },
    LINES_PER_FRAME("linesPerFrame", "lines") {
        @Override
        public Rational of(SourceTiming timing) {
            return timing.linesPerFrame();
        }
    },
    DOTS_PER_LINE("dotsPerLine", "dots") {
        @Override
        public Rational of(SourceTiming timing) {
            return timing.dotsPerLine();
        }
    },
    DOT_CLOCK("dotClockHz", "Hz") {
        @Override
        public Rational of(SourceTiming timing) {
            return timing.dotClock().hz();
        }
    };

    private final String id;
    private final String unit;

    Measurand(String id, String unit) {
        this.id = id;
        this.unit = unit;
    }

    /** The name of the member that holds it. */
    public String id() {
        return id;
    }

    public String unit() {
        return unit;
    }

    /** Whether it is counted, and so exact unless a range is given. */
    public boolean isCount() {
        return this == LINES_PER_FIELD || this == LINES_PER_FRAME || this == DOTS_PER_LINE;
    }

    /** Its exact value in a timing, in {@link #unit}. */
    public abstract Rational of(SourceTiming timing);
}
