package rasterfit.match.tune;

import rasterfit.match.AcceptanceGrade;

/** The default utility curves, each from 0 to 1 (assumption; told by the list of criteria). */
public final class Curves {
    private static final double FRAME_MS = 16.7;

    private Curves() {}

    /**
     * Clamp(2·least/greatest − 1).
     *
     * @param ratio of the least to the greatest dot width or line height
     */
    public static double evenness(double ratio) {
        return Math.max(0, 2 * ratio - 1);
    }

    /** The worse of both directions; soft edges count against the dots alone. */
    public static double uniformity(double dotEvenness, double softness, double lineEvenness) {
        return Math.min(dotEvenness * (1 - softness), lineEvenness);
    }

    /** 1 up to 1 %, linear to 0 at 15 %. */
    public static double aspect(double errorPercent) {
        return Math.max(0, Math.min(1, (15 - Math.abs(errorPercent)) / 14));
    }

    /**
     * Drawn area against the greatest at the intended aspect, at most 1, times the part of the drawn picture that is not
     * cut off: without the second factor a larger crop would only ever look better.
     *
     * @param keptLines share of the really drawn lines that stay visible
     * @param keptDots share of the really drawn dots that stay visible
     */
    public static double coverage(double drawnArea, double greatestArea, double keptLines, double keptDots) {
        return Math.min(1, drawnArea / greatestArea) * keptLines * keptDots;
    }

    /** 1/(1 + 4·beats per second), ×0.5 for whole frames, ×0.7 with a tear. */
    public static double motion(double beatHz, boolean wholeFrame, boolean tears) {
        return 1 / (1 + 4 * beatHz) * (wholeFrame ? 0.5 : 1) * (tears ? 0.7 : 1);
    }

    /** Half for every 16.7 ms. */
    public static double latency(double ms) {
        return Math.pow(2, -ms / FRAME_MS);
    }

    public static double acceptance(AcceptanceGrade grade) {
        return grade.utility();
    }

    /** Half for every two seconds without picture. */
    public static double gap(double seconds) {
        return Math.pow(2, -seconds / 2);
    }

    public static double effort(double changes) {
        return 1 / (1 + changes / 4);
    }

    /** Half for every 150 units of the currency. */
    public static double cost(double amount) {
        return Math.pow(2, -amount / 150);
    }
}
