package rasterfit.match.property;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;
import rasterfit.gear.Carried;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.Level;
import rasterfit.gear.LineStandard;
import rasterfit.gear.LinkKind;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.PriceRange;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.ScaleAxis;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Money;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.Scan;
import rasterfit.timing.VideoTiming;

/** Random converters with every way of processing. */
final class ConverterArbitraries {
    private static final Rational RESOLUTION_PPM = Rational.of(2000);

    private ConverterArbitraries() {}

    /** @param few whether only a handful of settings may come of it */
    static Arbitrary<List<Converter>> converters(boolean few) {
        return converter(few).list().ofMinSize(1).ofMaxSize(2).map(list -> {
            List<Converter> numbered = new ArrayList<>();
            for (Converter converter : list) {
                numbered.add(Altered.with(converter, "id", "box-" + (numbered.size() + 1)));
            }
            return numbered;
        });
    }

    private static Arbitrary<Converter> converter(boolean few) {
        Arbitrary<ConverterOutput> output = Combinators.combine(
                        Arbitraries.of(LinkKind.HDMI, LinkKind.DVI),
                        Arbitraries.of(165, 225, 80),
                        Arbitraries.of(true, true, false))
                .as((kind, megahertz, repetition) -> new ConverterOutput.Digital(
                        "out", GearArbitraries.HDMI, kind, Frequency.ofHz(megahertz * 1_000_000L), repetition));
        return Combinators.combine(
                        price().injectNull(0.15),
                        input(few),
                        few ? oneWay() : ways(),
                        output,
                        Arbitraries.integers().between(50, 2000),
                        Arbitraries.integers().between(0, 12))
                .as((price, input, ways, out, resync, toTune) -> new Converter(
                        "box",
                        "Box",
                        price,
                        List.of(input),
                        ways,
                        List.of(out),
                        Fact.known(resync),
                        Fact.known(toTune)));
    }

    static Arbitrary<PriceRange> price() {
        return Combinators.combine(
                        Arbitraries.integers().between(1, 250),
                        Arbitraries.integers().between(0, 40))
                .as((least, spread) -> new PriceRange(euros(least), euros(least + spread), null));
    }

    private static Money euros(int amount) {
        return new Money(BigDecimal.valueOf(amount), "EUR");
    }

    private static Arbitrary<ConverterInput> input(boolean few) {
        Arbitrary<SamplesPerLine> fixed = Arbitraries.of(341, 682, 858, 1364, 780, 910, 1716, 864)
                .list()
                .ofMinSize(1)
                .ofMaxSize(few ? 1 : 3)
                .map(SamplesPerLine.FixedList::new);
        Arbitrary<SamplesPerLine> free = Combinators.combine(
                        Arbitraries.integers().between(300, 900),
                        Arbitraries.integers().between(0, 600))
                .as((min, span) -> new SamplesPerLine.FreeRange(min, min + span));
        Arbitrary<SamplesPerLine> samples =
                few ? fixed : Arbitraries.frequencyOf(Tuple.of(4, fixed), Tuple.of(1, free));
        Arbitrary<Digitiser> digitiser = Combinators.combine(
                        samples,
                        Arbitraries.of(110, 60, 30, 20),
                        Arbitraries.integers().between(1, 5))
                .as((counts, megahertz, jitter) -> new Digitiser(
                        Frequency.ofHz(megahertz * 1_000_000L),
                        counts,
                        32,
                        List.of(Frequency.ofHz(35_000_000)),
                        Fact.known(jitter)));
        return Combinators.combine(
                        digitiser,
                        Arbitraries.frequency(Tuple.of(9, 63), Tuple.of(1, 55)),
                        Arbitraries.frequency(
                                Tuple.of(6, EnumSet.allOf(Scan.class)), Tuple.of(1, EnumSet.of(Scan.PROGRESSIVE))),
                        Arbitraries.frequency(
                                Tuple.of(9, HalfHeight.SHOWN),
                                Tuple.of(1, HalfHeight.AS_INTERLACED),
                                Tuple.of(1, HalfHeight.UNSTABLE)))
                .as((each, fields, scans, halfHeight) -> new ConverterInput(
                        "in",
                        GearArbitraries.SCART,
                        Level.VIDEO_75_OHM,
                        List.of(new Carried(Format.RGB, Set.of())),
                        new FrequencyRange(Frequency.ofHz(15_000), Frequency.ofHz(16_500)),
                        new FrequencyRange(Frequency.ofHz(47), Frequency.ofHz(fields)),
                        scans,
                        halfHeight,
                        Fact.unknown(),
                        RESOLUTION_PPM,
                        each));
    }

    private static Arbitrary<List<Processing>> oneWay() {
        return Arbitraries.frequencyOf(
                Tuple.of(1, formatOnly().map(List::of)),
                Tuple.of(2, repeat().map(List::of)),
                Tuple.of(3, scale(true).map(List::of)));
    }

    private static Arbitrary<List<Processing>> ways() {
        return Combinators.combine(
                        formatOnly().injectNull(0.6),
                        repeat().injectNull(0.4),
                        scale(false).injectNull(0.3))
                .as((a, b, c) -> Stream.of(a, b, c).filter(Objects::nonNull).toList())
                .flatMap(ways -> ways.isEmpty() ? repeat().map(List::of) : Arbitraries.just(ways));
    }

    private static Arbitrary<Fact> microseconds() {
        return Arbitraries.integers().between(0, 2000).map(Fact::known);
    }

    private static Arbitrary<Processing> formatOnly() {
        return microseconds().map(pipeline -> new Processing.FormatOnly("pass", pipeline));
    }

    private static Arbitrary<Processing> repeat() {
        Arbitrary<List<Integer>> copies = Arbitraries.of(2, 3, 4, 5)
                .set()
                .ofMinSize(1)
                .ofMaxSize(2)
                .map(set -> set.stream().sorted().toList());
        return Combinators.combine(
                        copies,
                        Arbitraries.integers().between(1, 3).map(Fact::known).injectNull(0.2),
                        Arbitraries.integers().between(2, 4).injectNull(0.5),
                        Arbitraries.of(Processing.InterlacedFields.class),
                        microseconds())
                .as((of, start, memory, interlaced, pipeline) -> new Processing.LineRepeat(
                        "repeat",
                        List.of(counts(LineStandard.L525_60, 240, of), counts(LineStandard.L625_50, 288, of)),
                        null,
                        start == null ? Fact.unknown() : start,
                        memory,
                        interlaced,
                        pipeline));
    }

    private static Processing.LineCounts counts(LineStandard standard, int from, List<Integer> copies) {
        return new Processing.LineCounts(
                standard, from, copies.stream().map(m -> from * m).toList());
    }

    private static Arbitrary<Processing> scale(boolean few) {
        Arbitrary<List<OfferedTiming>> timings = Arbitraries.of(2, 4, 16, 19, 31, 17)
                .set()
                .ofMinSize(1)
                .ofMaxSize(few ? 1 : 2)
                .map(vics -> vics.stream()
                        .sorted()
                        .map(ConverterArbitraries::offered)
                        .toList());
        Arbitrary<RateLock> locked = Combinators.combine(
                        Arbitraries.of(3000, 6000, 500, 100_000),
                        Arbitraries.integers().between(5, 60).injectNull(0.5))
                .as((pull, lines) -> new RateLock.SourceLocked(Rational.of(pull), null, lines));
        Arbitrary<RateLock> free = Combinators.combine(
                        Arbitraries.of(1, 2),
                        Arbitraries.of(Frequency.ofHz(60), Frequency.ofHz(60_000, 1001), Frequency.ofHz(50))
                                .set()
                                .ofMaxSize(1)
                                .map(List::copyOf))
                .as((stores, rates) -> new RateLock.FreeRunning(rates, stores));
        Arbitrary<List<RateLock>> locks = few
                ? Arbitraries.oneOf(locked, free).map(List::of)
                : Combinators.combine(locked, free).as(List::of);
        Arbitrary<List<Deinterlacer>> deinterlacers = Arbitraries.of(Deinterlacer.Kind.class)
                .set()
                .ofMinSize(1)
                .ofMaxSize(few ? 1 : 2)
                .map(kinds -> kinds.stream()
                        .sorted()
                        .map(kind -> new Deinterlacer(kind, Fact.known(1), kind == Deinterlacer.Kind.WEAVE))
                        .toList());
        return Combinators.combine(timings, axis(48), axis(64), deinterlacers, locks, microseconds())
                .as((offered, vertical, horizontal, kinds, rates, pipeline) ->
                        new Processing.RasterScale("scale", offered, vertical, horizontal, kinds, rates, pipeline));
    }

    private static Arbitrary<ScaleAxis> axis(int mostCrop) {
        return Combinators.combine(
                        Arbitraries.of(ScaleAxis.Factors.ANY, ScaleAxis.Factors.ANY, ScaleAxis.Factors.WHOLE),
                        Arbitraries.of(1, 2, 4),
                        Arbitraries.of(mostCrop, mostCrop / 3, 0))
                .as(ScaleAxis::new);
    }

    private static OfferedTiming offered(int vic) {
        VideoTiming timing = Cta861.find(vic).orElseThrow();
        return new OfferedTiming("vic:" + vic, timing.timing(), timing.pictureAspect());
    }
}
