package rasterfit.replay;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;

/** Copies of answers in which one number is not the right one. */
final class Falsified {
    private Falsified() {}

    /**
     * The setup with another claim for its first mode.
     *
     * @param path names of record components below {@link Measures}, such as {@code shape.leastDotWidth}
     */
    static RankedSetup claim(RankedSetup setup, String path, UnaryOperator<@Nullable Object> change) {
        return firstSetting(setup, setting -> with(setting, "measures." + path, change));
    }

    /** The setup with another setting for its first mode. */
    static RankedSetup setting(RankedSetup setup, String path, UnaryOperator<@Nullable Object> change) {
        return firstSetting(setup, setting -> with(setting, "settings." + path, change));
    }

    private static RankedSetup firstSetting(RankedSetup setup, UnaryOperator<ModeSetting> change) {
        ModeSetting first = setup.modeSettings().get(0);
        if (!first.measuresByMode().equals(Map.of())) {
            throw new IllegalArgumentException("the claims of several modes are not changed");
        }
        List<ModeSetting> settings = new ArrayList<>(setup.modeSettings());
        settings.set(0, change.apply(first));
        return with(setup, "modeSettings", old -> settings);
    }

    @SuppressWarnings("unchecked")
    private static <R extends Record> R with(R record, String path, UnaryOperator<@Nullable Object> change) {
        String[] names = path.split("\\.", 2);
        RecordComponent[] components = record.getClass().getRecordComponents();
        try {
            Object[] values = new Object[components.length];
            for (int i = 0; i < components.length; i++) {
                Object value = components[i].getAccessor().invoke(record);
                boolean isMeant = components[i].getName().equals(names[0]);
                values[i] = !isMeant
                        ? value
                        : names.length == 1 ? change.apply(value) : with((Record) value, names[1], change);
            }
            Class<?>[] types =
                    Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
            Constructor<?> constructor = record.getClass().getDeclaredConstructor(types);
            R copy = (R) constructor.newInstance(values);
            if (copy.equals(record)) {
                throw new IllegalArgumentException("nothing changed at " + path);
            }
            return copy;
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(path + " of " + record, impossible);
        }
    }
}
