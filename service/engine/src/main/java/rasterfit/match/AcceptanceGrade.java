package rasterfit.match;

import rasterfit.quantity.Rational;

/** How sure it is that a display shows a raster, surest first. */
public enum AcceptanceGrade {
    TESTED(1),
    LISTED(1),
    NEAR_LISTED(0.9),
    WITHIN_LIMITS_CONTINUOUS(0.85),
    WITHIN_LIMITS_NOT_PROMISED(0.5),
    LARGER_THAN_LISTED(0.15),
    LIMITS_UNKNOWN(0.1),
    OUTSIDE_LIMITS(0.05);

    private final double utility;

    AcceptanceGrade(double utility) {
        this.utility = utility;
    }

    /** Between 0 and 1 (assumption). */
    public double utility() {
        return utility;
    }

    /** 0 for the worst grade, so that limits compare grades like numbers. */
    public Rational rankFromWorst() {
        return Rational.of(values().length - 1 - ordinal());
    }

    /** The grade of that rank. */
    static AcceptanceGrade ofRankFromWorst(Rational rank) {
        return values()[values().length - 1 - (int) rank.floor()];
    }

    public boolean isAtLeast(AcceptanceGrade other) {
        return ordinal() <= other.ordinal();
    }

    public AcceptanceGrade worse(AcceptanceGrade other) {
        return isAtLeast(other) ? other : this;
    }

    /** One grade lower, as far as there is one. */
    public AcceptanceGrade lowered() {
        return values()[Math.min(ordinal() + 1, values().length - 1)];
    }
}
