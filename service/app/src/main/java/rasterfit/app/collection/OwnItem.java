package rasterfit.app.collection;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.app.collection.OwnItemBody.ItemKind;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;
import rasterfit.gear.Source;

/**
 * An owned thing with its gear. Where the catalogue does not hold it any more, all gear is absent.
 *
 * @param catalogueId absent where it was described
 * @param variantId of a console; absent where it was not noted
 */
record OwnItem(
        String id,
        ItemKind kind,
        @Nullable String catalogueId,
        @Nullable String variantId,
        @Nullable String firmware,
        @Nullable Source source,
        @Nullable Display display,
        @Nullable Converter converter,
        @Nullable Link link) {

    /** A switch that does not say how many sources it joins is taken to join two (assumption). */
    private static final int USUAL_PORTS = 2;

    /**
     * A place where something is plugged in.
     *
     * @param key what is held while it is used: console signals that share a connector share it
     * @param plug absent where it is not known
     */
    record Port(String name, String key, @Nullable Plug plug, boolean gives) {}

    boolean isMissing() {
        return source == null && display == null && converter == null && link == null;
    }

    /** Whether the catalogue lacks the thing, or this variant of it. */
    boolean isLost() {
        return isMissing()
                || (source != null
                        && variantId != null
                        && source.variants().stream().noneMatch(one -> one.id().equals(variantId)));
    }

    /** Whether it is the same piece of gear, whatever else is noted of it. */
    boolean isSameGearAs(OwnItem other) {
        return kind == other.kind
                && Objects.equals(catalogueId, other.catalogueId)
                && Objects.equals(variantId, other.variantId)
                && Objects.equals(source, other.source)
                && Objects.equals(display, other.display)
                && Objects.equals(converter, other.converter)
                && Objects.equals(link, other.link);
    }

    boolean isSwitch() {
        return link != null && link.kind() == Link.Kind.SWITCH;
    }

    /** Whether it is laid between two ports as a whole. */
    boolean isLaid() {
        return link != null && link.kind() != Link.Kind.SWITCH;
    }

    Optional<Port> port(String name, boolean gives) {
        return ports().filter(port -> port.name().equals(name) && port.gives() == gives)
                .findFirst();
    }

    /** Names of the ports that give, or take, a signal. */
    List<String> portNames(boolean gives) {
        return ports().filter(port -> port.gives() == gives)
                .map(Port::name)
                .distinct()
                .toList();
    }

    private Stream<Port> ports() {
        if (source != null) {
            return source.variants().stream()
                    .filter(variant -> variantId == null || variantId.equals(variant.id()))
                    .flatMap(variant -> variant.outputs().stream())
                    .map(output ->
                            new Port(output.id(), output.plug().connector().name(), output.plug(), true));
        }
        if (display != null) {
            return display.inputs().stream().map(input -> new Port(input.id(), input.id(), input.plug(), false));
        }
        if (converter != null) {
            return Stream.concat(
                    converter.inputs().stream().map(input -> new Port(input.id(), input.id(), input.plug(), false)),
                    converter.outputs().stream()
                            .map(output -> new Port(output.id(), output.id(), output.plug(), true)));
        }
        return link != null && isSwitch() ? portsOf(link) : Stream.empty();
    }

    private static Stream<Port> portsOf(Link link) {
        int joined = link.ports() == null ? USUAL_PORTS : link.ports();
        return Stream.concat(
                IntStream.rangeClosed(1, joined).mapToObj(i -> new Port("in-" + i, "in-" + i, link.from(), false)),
                Stream.of(new Port("out", "out", link.to(), true)));
    }
}
