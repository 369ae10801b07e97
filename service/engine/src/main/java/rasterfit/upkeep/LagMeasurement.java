package rasterfit.upkeep;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.LagReading;
import rasterfit.quantity.Rational;

/**
 * Lag of a display input, read with a camera: how many camera frames lie between cause and picture, several times over.
 *
 * @param timing label of the timing that was shown ({@code vic:16}); absent where it was not noted
 * @param referenceRow panel row at which it was read; absent: the top row
 * @param cameraFramesPerSecond of the camera; above 0
 * @param framesCounted one count for each repetition; at least one, none negative
 */
public record LagMeasurement(
        @Nullable String timing,
        LagReading.Method method,
        @Nullable Integer referenceRow,
        Rational cameraFramesPerSecond,
        List<Integer> framesCounted) {

    public LagMeasurement {
        framesCounted = List.copyOf(framesCounted);
        if (cameraFramesPerSecond.signum() <= 0) {
            throw new IllegalArgumentException("a camera takes more than 0 frames per second");
        }
        if (framesCounted.isEmpty() || framesCounted.stream().anyMatch(count -> count < 0)) {
            throw new IllegalArgumentException("a measurement needs at least one count, and none below 0");
        }
    }
}
