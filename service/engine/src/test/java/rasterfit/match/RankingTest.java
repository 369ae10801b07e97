package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Fact;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.quantity.Frequency;

/** Order and dominance over whole answers, where what decides is a setting that is not the best of its own route. */
class RankingTest {
    private static void only(Workbench bench, Criterion... criteria) {
        for (Criterion criterion : Criterion.values()) {
            bench.weight(criterion, List.of(criteria).contains(criterion) ? 1 : 0);
        }
    }

    private static Processing free(long pipelineUs, int... stores) {
        Processing.RasterScale scale = (Processing.RasterScale) Workbench.scale(
                1,
                IntStream.of(stores)
                        .mapToObj(count -> Workbench.free(count, Frequency.ofHz(60)))
                        .toList(),
                16);
        return new Processing.RasterScale(
                scale.id(),
                scale.timings(),
                scale.vertical(),
                scale.horizontal(),
                scale.deinterlacers(),
                scale.rateLocks(),
                Fact.known(pipelineUs));
    }

    private static List<String> converters(MatchResult result) {
        return result.ranked().stream().map(setup -> setup.route().get(1).id()).toList();
    }

    private static Mode[] modes(int groups) {
        Mode picture = Modes.as(Modes.half525(), "picture", 3, false);
        return groups == 1
                ? new Mode[] {picture}
                : new Mode[] {picture, Modes.as(Modes.interlaced525(), "menu", 1, false)};
    }

    /**
     * The cheap box shows fields from two stores without tearing, or quicker from one with tears (../shared/DOMAIN.md section
     * 8). Weights that do not ask for delay make the two stores its best. The dear box has one store, is 2 ms slower and loses
     * dots: the cheap box with one store is better on every axis, so the dear one is dominated, though its delay is shorter
     * than that of the cheap box's best.
     */
    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void aSettingThatIsNotTheBestOfItsRouteDominatesToo(int groups) {
        Converter cheap = Workbench.converter("cheap", "100", Workbench.samples(1364, 1560), free(10, 2, 1));
        Converter dear = Workbench.converter("dear", "200", Workbench.samples(340), free(2000, 1));
        Workbench bench =
                new Workbench().modes(modes(groups)).converters(cheap, dear).display(Workbench.television(0, 16));
        only(bench, Criterion.DOT_UNIFORMITY, Criterion.MOTION);
        MatchResult result = bench.match();

        assertThat(converters(result)).containsExactly("cheap", "dear");
        Latency best = latency(result.ranked().get(0));
        assertThat(latency(result.ranked().get(1)).typical()).isLessThan(best.typical());
        assertThat(result.ranked()).extracting(RankedSetup::paretoOptimal).containsExactly(true, false);
    }

    private static Latency latency(RankedSetup setup) {
        return setup.modeSettings().get(0).measures().totalLatencyMs();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void theFirstFewAreTheHeadOfAll(int groups) {
        List<RankedSetup> all = ofOneRoute(groups, 10_000);
        for (int keep : new int[] {1, 2, 3, 7}) {
            List<RankedSetup> few = ofOneRoute(groups, keep);
            assertThat(few).hasSize(keep);
            assertThat(few.stream().map(RankedSetup::score))
                    .containsExactlyElementsOf(
                            all.stream().limit(keep).map(RankedSetup::score).toList());
        }
    }

    private static List<RankedSetup> ofOneRoute(int groups, int settings) {
        return new Workbench()
                .modes(modes(groups))
                .converters(Workbench.converter("box", Workbench.samples(1364), free(10, 2)))
                .display(Workbench.only(AspectControl.FILL, Workbench.television(0, 16)))
                .settingsPerRoute(settings)
                .top(10_000)
                .match()
                .ranked();
    }

    @Test
    void ranksCountFromOne() {
        assertThat(ofOneRoute(1, 3)).extracting(RankedSetup::rank).containsExactly(1, 2, 3);
    }

    private static Converter toSet(String id, int settings) {
        Converter any = Workbench.converter(id, Workbench.samples(1364), free(10, 2));
        return new Converter(
                any.id(),
                any.name(),
                any.price(),
                any.inputs(),
                any.processing(),
                any.outputs(),
                any.resyncMs(),
                Fact.known(settings));
    }

    @Test
    void lessToSetComesFirst() {
        // 1/(1 + 8/4) = 1/3 and 1/(1 + 4/4) = 1/2.
        Workbench bench = new Workbench().modes(Modes.half525()).converters(toSet("a-eight", 8), toSet("b-four", 4));
        only(bench, Criterion.EFFORT);
        MatchResult result = bench.match();
        assertThat(converters(result)).containsExactly("b-four", "a-eight");
        assertThat(result.ranked().get(0).score()).isEqualTo(0.5);
    }

    @Test
    void workThatIsTooMuchTellsHowMuchAndWhatIsAllowed() {
        TooMuchWork much = new TooMuchWork(11, 10);
        assertThat(much.settings()).isEqualTo(11);
        assertThat(much.maximum()).isEqualTo(10);
    }

    @Test
    void theCataloguesEquipmentIsUsedOnlyWhereTheRequestSaysSo() {
        Workbench bench = new Workbench().modes(Modes.half525());
        MatchRequest request = bench.request();
        Catalogue catalogue = new Catalogue(
                7,
                Catalogue.EMPTY.sources(),
                Catalogue.EMPTY.displays(),
                java.util.Map.of("box", toSet("box", 4)),
                java.util.Map.of("lead", Scene.cable("lead", Scene.SCART, Scene.SCART, Fact.known(50_000_000))));
        assertThat(new Matcher(WorkLimit.DEFAULT).match(request, catalogue).ranked())
                .isEmpty();
        MatchRequest withCatalogue = new MatchRequest(
                request.sourceName(),
                request.source(),
                request.display(),
                new MatchRequest.Equipment(true, List.of(), List.of()),
                request.intent(),
                request.weights(),
                request.limits(),
                request.pixelAspect(),
                request.explain(),
                request.top(),
                request.settingsPerRoute());
        MatchResult result = new Matcher(WorkLimit.DEFAULT).match(withCatalogue, catalogue);
        assertThat(result.ranked())
                .singleElement()
                .satisfies(setup -> assertThat(setup.route())
                        .extracting(MatchResult.RouteStep::id)
                        .containsExactly("rgb", "lead", "box", "screen"));
        assertThat(result.catalogueRevision()).isEqualTo(7);
    }
}
