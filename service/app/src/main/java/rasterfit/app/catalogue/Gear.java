package rasterfit.app.catalogue;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.Link;
import rasterfit.gear.Mode;
import rasterfit.gear.PriceRange;
import rasterfit.gear.SinkLimits;
import rasterfit.gear.Source;
import rasterfit.gear.Variant;
import rasterfit.quantity.Frequency;

/** One item of the catalogue in the engine's own types, with what it is listed and searched by. */
sealed interface Gear {
    Kind kind();

    String id();

    String name();

    /** That of a console is of its cheapest variant to its dearest; absent where none is known, or in several currencies. */
    @Nullable
    PriceRange price();

    List<Capability> capabilities();

    record OfSource(Source source) implements Gear {
        @Override
        public Kind kind() {
            return Kind.SOURCE;
        }

        @Override
        public String id() {
            return source.id();
        }

        @Override
        public String name() {
            return source.name();
        }

        @Override
        public @Nullable PriceRange price() {
            List<PriceRange> prices = source.variants().stream()
                    .map(Variant::price)
                    .filter(Objects::nonNull)
                    .toList();
            boolean isOneCurrency = prices.stream()
                            .map(price -> price.least().currency())
                            .distinct()
                            .count()
                    == 1;
            return isOneCurrency ? hull(prices) : null;
        }

        private static PriceRange hull(List<PriceRange> prices) {
            PriceRange first = prices.get(0);
            return prices.stream()
                    .reduce((one, other) -> new PriceRange(
                            one.least().amount().compareTo(other.least().amount()) <= 0 ? one.least() : other.least(),
                            one.greatest().amount().compareTo(other.greatest().amount()) >= 0
                                    ? one.greatest()
                                    : other.greatest(),
                            null))
                    .orElse(first);
        }

        @Override
        public List<Capability> capabilities() {
            return source.variants().stream()
                    .flatMap(variant -> variant.outputs().stream()
                            .map(output -> new Capability(
                                    output.plug().connector().name(), output.format(), lineRates(variant))))
                    .distinct()
                    .toList();
        }

        private static FrequencyRange lineRates(Variant variant) {
            List<Frequency> rates =
                    variant.modes().stream().map(Mode::lineRate).sorted().toList();
            return new FrequencyRange(rates.get(0), rates.get(rates.size() - 1));
        }
    }

    record OfDisplay(Display display, @Nullable PriceRange price) implements Gear {
        @Override
        public Kind kind() {
            return Kind.DISPLAY;
        }

        @Override
        public String id() {
            return display.id();
        }

        @Override
        public String name() {
            return display.name();
        }

        @Override
        public List<Capability> capabilities() {
            return display.inputs().stream()
                    .flatMap(OfDisplay::capabilities)
                    .distinct()
                    .toList();
        }

        private static Stream<Capability> capabilities(DisplayInput input) {
            if (input.plug() == null) {
                return Stream.empty();
            }
            SinkLimits sink = input.sink();
            FrequencyRange lineRate = input.lineRate() == null && sink != null ? sink.lineRate() : input.lineRate();
            return Capability.of(input.plug(), input.accepts(), lineRate).stream();
        }
    }

    record OfConverter(Converter converter) implements Gear {
        @Override
        public Kind kind() {
            return Kind.CONVERTER;
        }

        @Override
        public String id() {
            return converter.id();
        }

        @Override
        public String name() {
            return converter.name();
        }

        @Override
        public @Nullable PriceRange price() {
            return converter.price();
        }

        @Override
        public List<Capability> capabilities() {
            Stream<Capability> inputs = converter.inputs().stream()
                    .flatMap(input -> Capability.of(input.plug(), input.accepts(), input.lineRate()).stream());
            Stream<Capability> outputs = converter.outputs().stream()
                    .map(output -> new Capability(output.plug().connector().name(), output.format(), null));
            return Stream.concat(inputs, outputs).distinct().toList();
        }
    }

    record OfLink(Link link) implements Gear {
        @Override
        public Kind kind() {
            return Kind.LINK;
        }

        @Override
        public String id() {
            return link.id();
        }

        @Override
        public String name() {
            return link.name();
        }

        @Override
        public @Nullable PriceRange price() {
            return link.price();
        }

        @Override
        public List<Capability> capabilities() {
            Stream<Capability> passed = Stream.of(link.from(), link.to())
                    .flatMap(plug -> Capability.of(plug, link.carries(), null).stream());
            Stream<Capability> converted = link.conversions().stream()
                    .flatMap(made -> Stream.of(
                            new Capability(link.from().connector().name(), made.fromFormat(), null),
                            new Capability(link.to().connector().name(), made.toFormat(), null)));
            return Stream.concat(passed, converted).distinct().toList();
        }
    }
}
