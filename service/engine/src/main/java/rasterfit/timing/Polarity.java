package rasterfit.timing;

/** The sign of a sync pulse. */
public enum Polarity {
    POSITIVE,
    NEGATIVE;

    /** Of {@code +} or {@code -}, as the tables of this package write it. */
    static Polarity ofSign(char sign) {
        return sign == '+' ? POSITIVE : NEGATIVE;
    }
}
