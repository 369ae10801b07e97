package rasterfit.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.match.Workbench.converter;
import static rasterfit.match.Workbench.free;
import static rasterfit.match.Workbench.locked;
import static rasterfit.match.Workbench.samples;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rasterfit.gear.Deinterlacer.Kind;
import rasterfit.gear.Fact;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.gear.Processing.InterlacedFields;
import rasterfit.match.Latency;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;
import rasterfit.match.Modes;
import rasterfit.match.Workbench;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * A judge that cannot object proves nothing. Every claim that is replayed is made wrong, one at a time and by as little as
 * can be (one pixel, one line, a millionth), in an answer of every way of processing, and the replay has to object to it.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReplayObjectsTest {
    private static final Rational MILLIONTH = Rational.of(1, 1_000_000);

    private final List<Bench> benches = new ArrayList<>();

    private static Bench bench(Mode mode, Processing processing) {
        return Bench.of(new Workbench()
                .modes(mode)
                .display(Workbench.television(3, 2, 4, 16))
                .converters(converter("box", samples(858, 1364), processing)));
    }

    @BeforeAll
    void answerSomeRequests() {
        Mode half = Modes.half525();
        Processing weave =
                Bench.scale(2, List.of(Bench.deinterlacer(Kind.WEAVE, Fact.known(1))), locked(9000, null), 4, 16);
        benches.add(Bench.of(new Workbench().modes(half).display(Workbench.tube(4))));
        benches.add(bench(Modes.interlaced525(), Workbench.formatOnly()));
        benches.add(bench(half, Bench.repeat(Fact.unknown(), InterlacedFields.REFUSED)));
        benches.add(bench(half, Bench.scale(4, List.of(), locked(9000, null), 4, 16)));
        benches.add(bench(Modes.interlaced525(), weave));
        benches.add(bench(half, Bench.scale(2, List.of(), free(2, Frequency.ofHz(60)), 4, 16)));
        benches.add(bench(half, Bench.scale(1, List.of(), free(1, Frequency.ofHz(50)), 4, 16)));
    }

    /** Everything that a setup claims of shape, delay and memory, so that a claim added later cannot be left out. */
    private static Stream<String> claims() {
        Stream<String> shape = names(Measures.Shape.class)
                // How a filter mixes dots is not a matter of where they land.
                .filter(name -> !name.equals("blendedColumnsPercent"))
                .map(name -> "shape." + name);
        Stream<String> delay = names(Latency.class)
                .filter(name -> !name.equals("basis"))
                .flatMap(name -> Stream.of("addedLatencyMs." + name, "totalLatencyMs." + name));
        return Stream.of(
                        shape,
                        delay,
                        Stream.of("pixelAspectRatio", "addedLatencyFields", "bufferedLines", "fieldStores"),
                        Stream.of("dropOrRepeatEverySeconds", "tearDriftPicturesPerSecond"))
                .flatMap(some -> some);
    }

    private static Stream<String> names(Class<? extends Record> type) {
        return Arrays.stream(type.getRecordComponents()).map(RecordComponent::getName);
    }

    Stream<Arguments> wrongClaims() {
        return benches.stream()
                .flatMap(bench -> claims().flatMap(claim -> Stream.of(1, -1)
                        .map(sign ->
                                Arguments.of(Way.of(bench.best().modeSettings().get(0)), claim, sign, bench))));
    }

    @ParameterizedTest(name = "{0}: {1} {2}")
    @MethodSource("wrongClaims")
    void everyWrongClaimIsObjectedTo(Object ways, String claim, int sign, Bench bench) {
        assertThat(bench.replay().objections(bench.best())).isEmpty();

        RankedSetup wrong = Falsified.claim(bench.best(), claim, wrong(claim, sign));

        assertThat(bench.replay().objections(wrong))
                .extracting(Objection::measure)
                .contains(claim);
    }

    private static UnaryOperator<Object> wrong(String claim, int sign) {
        boolean isCount =
                claim.endsWith("Width") || claim.endsWith("Height") || claim.matches("bufferedLines|fieldStores");
        return right -> {
            if (right == null) {
                // What does not apply is claimed all the same.
                return isCount ? (Object) (3 + sign) : Rational.of(3 + sign);
            }
            if (right instanceof Integer count) {
                return count + sign;
            }
            Rational exact = (Rational) right;
            // Beats are counted, so they have to be wrong by more than one of a dozen.
            return claim.equals("dropOrRepeatEverySeconds")
                    ? exact.times(sign > 0 ? Rational.of(5, 4) : Rational.of(4, 5))
                    : exact.plus(MILLIONTH.times(sign));
        };
    }

    static Stream<Arguments> wrongSettings() {
        return Stream.of(
                Arguments.of("captureFirstDot", List.of("shape.croppedDots")),
                Arguments.of("captureDots", List.of("shape.horizontalScale", "shape.aspectErrorPercent")),
                Arguments.of("pictureWidth", List.of("shape.horizontalScale", "shape.aspectErrorPercent")),
                Arguments.of("pictureHeight", List.of("shape.verticalScale", "addedLatencyMs.greatest")),
                Arguments.of("pictureTop", List.of("shape.croppedLines")),
                Arguments.of("firstLine", List.of("shape.croppedLines")),
                Arguments.of("lines", List.of("shape.verticalScale", "addedLatencyMs.greatest")));
    }

    /** The replay goes by the settings, so claims that belong to other settings do not stand. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("wrongSettings")
    void aSettingThatIsNotTheOneOfTheClaimsIsObjectedTo(String setting, List<String> measures) {
        Bench bench = benches.get(3);

        RankedSetup wrong = Falsified.setting(
                bench.best(),
                setting,
                right -> right instanceof Integer count ? count - 1 : ((Rational) right).minus(Rational.ONE));

        assertThat(bench.replay().objections(wrong))
                .extracting(Objection::measure)
                .containsAll(measures);
    }
}
