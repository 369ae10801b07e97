package rasterfit.match.tune;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.DisplayTest;
import rasterfit.match.AcceptanceGrade;
import rasterfit.quantity.Rational;
import rasterfit.timing.Raster;

/**
 * Which of an owner's own tests speaks of a raster. On a digital link the same raster has the same active counts, totals
 * and scan, and a pixel clock within ±0.5 %. An analog input sees sync, not dots: there it has the same vertical total and
 * scan, and a line rate within ±0.5 % (the tolerance of {@link Acceptor}; its use here is an assumption). Of several the
 * nearest in rate counts, and of these the newest.
 */
final class OwnTests {
    private static final Rational HALF_PERCENT = Rational.HALF;

    private OwnTests() {}

    /** The test that decides; absent if none was made of this raster, or none that still holds. */
    static @Nullable DisplayTest deciding(DisplayInput input, Raster raster, boolean digital) {
        return nearest(input.own().tests(), raster, digital);
    }

    /** The nearest test that was made with another firmware; absent if there is none. */
    static @Nullable DisplayTest outdated(DisplayInput input, Raster raster, boolean digital) {
        return nearest(input.own().outdated(), raster, digital);
    }

    private static @Nullable DisplayTest nearest(List<DisplayTest> tests, Raster raster, boolean digital) {
        DisplayTest nearest = null;
        Rational least = HALF_PERCENT;
        for (DisplayTest test : tests) {
            Raster tried = test.raster();
            if (digital ? raster.hasSameCountsAs(tried) : looksLike(raster, tried)) {
                Rational off = raster.lineRate().percentFrom(tried.lineRate()).abs();
                if (nearest == null ? !off.isGreaterThan(least) : off.isLessThan(least)) {
                    nearest = test;
                    least = off;
                }
            }
        }
        return nearest;
    }

    private static boolean looksLike(Raster raster, Raster tried) {
        return raster.scan() == tried.scan() && raster.verticalTotal().equals(tried.verticalTotal());
    }

    /**
     * A raster shown with interruptions is one that the display does not hold: the lowest grade, whatever it lists. One
     * that stayed blank is refused, and keeps its grade until then.
     */
    static AcceptanceGrade grade(@Nullable DisplayTest test, AcceptanceGrade otherwise) {
        if (test == null) {
            return otherwise;
        }
        return switch (test.outcome()) {
            case SHOWN -> AcceptanceGrade.TESTED;
            case DROPS_OUT -> AcceptanceGrade.OUTSIDE_LIMITS;
            case BLANK -> otherwise;
        };
    }
}
