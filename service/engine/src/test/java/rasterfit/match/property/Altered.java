package rasterfit.match.property;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Link;
import rasterfit.match.Limit;
import rasterfit.match.MatchRequest;

/** Copies of requests and gear that differ in one thing. */
public final class Altered {
    private Altered() {}

    /**
     * A copy of a record with one component replaced; its constructor checks the new whole.
     *
     * @throws IllegalArgumentException if there is no such component, or the constructor refuses the copy
     */
    public static <R extends Record> R with(R record, String component, @Nullable Object value) {
        RecordComponent[] components = record.getClass().getRecordComponents();
        Class<?>[] types = new Class<?>[components.length];
        Object[] values = new Object[components.length];
        boolean found = false;
        try {
            for (int i = 0; i < components.length; i++) {
                types[i] = components[i].getType();
                boolean replaced = components[i].getName().equals(component);
                found |= replaced;
                var accessor = components[i].getAccessor();
                accessor.setAccessible(true);
                values[i] = replaced ? value : accessor.invoke(record);
            }
            if (!found) {
                throw new IllegalArgumentException(record.getClass() + " has no " + component);
            }
            var constructor = record.getClass().getDeclaredConstructor(types);
            constructor.setAccessible(true);
            @SuppressWarnings("unchecked")
            R copy = (R) constructor.newInstance(values);
            return copy;
        } catch (ReflectiveOperationException failed) {
            throw new IllegalArgumentException("no copy of " + record + " with " + component + " " + value, failed);
        }
    }

    /** With every converter of that id replaced. */
    public static MatchRequest converter(MatchRequest request, String id, UnaryOperator<Converter> change) {
        List<Converter> converters = request.equipment().converters().stream()
                .map(converter -> converter.id().equals(id) ? change.apply(converter) : converter)
                .toList();
        return with(request, "equipment", with(request.equipment(), "converters", converters));
    }

    public static MatchRequest links(MatchRequest request, List<Link> links) {
        return with(request, "equipment", with(request.equipment(), "links", links));
    }

    public static MatchRequest converters(MatchRequest request, List<Converter> converters) {
        return with(request, "equipment", with(request.equipment(), "converters", converters));
    }

    /** With that input of the display replaced. */
    public static MatchRequest input(MatchRequest request, String id, UnaryOperator<DisplayInput> change) {
        Display display = request.display();
        List<DisplayInput> inputs = display.inputs().stream()
                .map(input -> input.id().equals(id) ? change.apply(input) : input)
                .toList();
        return with(request, "display", with(display, "inputs", inputs));
    }

    public static MatchRequest limits(MatchRequest request, List<Limit> limits) {
        return with(request, "limits", limits);
    }

    public static MatchRequest limited(MatchRequest request, Limit... more) {
        List<Limit> limits = new ArrayList<>(request.limits());
        limits.addAll(List.of(more));
        return limits(request, limits);
    }

    public static MatchRequest top(MatchRequest request, int top) {
        return with(request, "top", top);
    }

    public static MatchRequest settingsPerRoute(MatchRequest request, int count) {
        return with(request, "settingsPerRoute", count);
    }
}
