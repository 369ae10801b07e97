package rasterfit.gear;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/** A number of a device: known, known only within a range, or unknown. */
public sealed interface Fact {
    /** The value to compute with; an unknown one becomes the assumption, marked as such. */
    Estimate orAssume(Estimate assumption);

    default boolean isUnknown() {
        return this instanceof Unknown;
    }

    static Fact unknown() {
        return new Unknown();
    }

    static Fact known(Rational value) {
        return new Known(value);
    }

    static Fact known(long value) {
        return new Known(Rational.of(value));
    }

    record Known(Rational value) implements Fact {
        @Override
        public Estimate orAssume(Estimate assumption) {
            return new Estimate(value, value, value, false);
        }
    }

    /** @param typical the middle of the range where absent */
    record Within(Rational least, @Nullable Rational typical, Rational greatest) implements Fact {
        public Within {
            if (least.isGreaterThan(greatest)) {
                throw new IllegalArgumentException("least " + least + " is above greatest " + greatest);
            }
            if (typical != null && (typical.isLessThan(least) || typical.isGreaterThan(greatest))) {
                throw new IllegalArgumentException("typical " + typical + " lies outside of least and greatest");
            }
        }

        @Override
        public Estimate orAssume(Estimate assumption) {
            Rational middle = typical != null ? typical : least.plus(greatest).dividedBy(2);
            return new Estimate(least, middle, greatest, false);
        }
    }

    record Unknown() implements Fact {
        @Override
        public Estimate orAssume(Estimate assumption) {
            return assumption;
        }
    }
}
