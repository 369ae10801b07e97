package rasterfit.app.gear;

import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.DisplayBody.DisplayInputBody;
import rasterfit.app.gear.DisplayBody.StateBody;

/**
 * One menu state over its input: each member comes from the state if that has it, or else from the input.
 *
 * @param statePlace absent, as is {@code state}, for an input without states
 */
record StateLayers(
        Place inputPlace,
        DisplayInputBody input,
        @Nullable Place statePlace,
        @Nullable StateBody state) {

    /** A value with the place where it is written. */
    record Written<T>(Place at, @Nullable T value) {}

    <T> Written<T> written(
            String name, Function<DisplayInputBody, @Nullable T> ofInput, Function<StateBody, @Nullable T> ofState) {
        T changed = state == null ? null : ofState.apply(state);
        return changed != null && statePlace != null
                ? new Written<>(statePlace.member(name), changed)
                : new Written<>(inputPlace.member(name), ofInput.apply(input));
    }
}
