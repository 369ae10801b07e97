package rasterfit.app.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.core.io.ClassPathResource;
import rasterfit.app.gear.CatalogueBody;
import rasterfit.app.gear.GearReader;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Source;
import rasterfit.gear.Variant;
import rasterfit.match.Intent;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Matcher;
import rasterfit.match.PixelAspectConvention;
import rasterfit.match.WorkLimit;
import rasterfit.replay.Replay;
import rasterfit.replay.Way;
import tools.jackson.databind.json.JsonMapper;

/**
 * Every ranked setup of every demo console on every input of every demo display, replayed by the simulations of the
 * raster ({@link Replay}): what each claims of dot widths, line heights, crop, aspect, coverage, latency and memory must
 * be what arrives.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class WholeAnswerReplayTest {
    private static final Catalogue DEMO = demo();

    /** So many setups of every route are ranked, and all that are ranked are replayed. */
    private static final int SETTINGS_PER_ROUTE = 30;

    private final Map<Way, Integer> replayed = new EnumMap<>(Way.class);
    private int setups;

    private static Catalogue demo() {
        try (InputStream in = new ClassPathResource("demo/catalogue.json").getInputStream()) {
            return GearReader.catalogue(JsonMapper.shared().readValue(in, CatalogueBody.class), 1);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    static Stream<Arguments> everyVariantOnEveryInput() {
        return sources()
                .flatMap(source -> DEMO.displays().values().stream()
                        .flatMap(display -> display.inputs().stream()
                                .map(input -> Arguments.of(
                                        source, display.id() + ":" + input.path(), only(display, input)))));
    }

    static Stream<Arguments> everyVariantOnATelevision() {
        Display television = DEMO.displays().get("lowick-40");
        return sources()
                .map(source -> Arguments.of(
                        source, only(television, television.inputs().get(0))));
    }

    /** One variant of a console. */
    private record Played(String name, Variant variant) {
        @Override
        public String toString() {
            return name + " " + variant.id();
        }
    }

    private static Stream<Played> sources() {
        List<Played> all = new ArrayList<>();
        for (Source source : DEMO.sources().values()) {
            source.variants().forEach(variant -> all.add(new Played(source.name(), variant)));
        }
        return all.stream();
    }

    private static Display only(Display display, DisplayInput input) {
        return new Display(
                display.id(),
                display.name(),
                display.displayClass(),
                display.panel(),
                List.of(input),
                display.assumptions());
    }

    @ParameterizedTest(name = "{0} on {1}")
    @MethodSource("everyVariantOnEveryInput")
    void everyRankedSetupShowsWhatItClaims(Played source, String input, Display display) {
        replay(source, display, DEMO.converters().values(), SETTINGS_PER_ROUTE);
    }

    /** Weaving, say, never ranks high where the same converter can do better. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("everyVariantOnATelevision")
    void everyWayOfEveryConverterShowsWhatItClaimsWhenThereIsNoOther(Played source, Display display) {
        replay(source, display, Alone.all(DEMO.converters().values()), 3);
    }

    private void replay(Played source, Display display, Collection<Converter> converters, int settingsPerRoute) {
        MatchRequest request = new MatchRequest(
                source.name(),
                source.variant(),
                display,
                new MatchRequest.Equipment(
                        false, List.copyOf(converters), List.copyOf(DEMO.links().values())),
                Intent.EVEN_WEIGHTS,
                Map.of(),
                List.of(),
                PixelAspectConvention.BROADCAST,
                MatchRequest.Explanation.SUMMARY,
                Integer.MAX_VALUE,
                settingsPerRoute);
        MatchResult result = new Matcher(WorkLimit.DEFAULT).match(request, Catalogue.EMPTY);
        Replay replay = new Replay(source.variant(), display, converters);
        for (RankedSetup setup : result.ranked()) {
            assertThat(replay.objections(setup))
                    .as("rank %d: %s, %s", setup.rank(), setup.route(), setup.modeSettings())
                    .isEmpty();
            setups++;
            setup.modeSettings()
                    .forEach(setting -> Way.of(setting).forEach(way -> replayed.merge(way, 1, Integer::sum)));
        }
    }

    /** Of the demo gear, so that neither test can pass for want of anything to replay. */
    @AfterAll
    void atLeastSoManyWereReplayed() {
        assertThat(setups).isGreaterThanOrEqualTo(3500);
        assertThat(replayed.keySet()).containsExactly(Way.values());
        assertThat(replayed.values()).allSatisfy(count -> assertThat(count).isGreaterThanOrEqualTo(10));
    }
}
