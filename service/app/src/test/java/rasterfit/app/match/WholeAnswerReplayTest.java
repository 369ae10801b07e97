package rasterfit.app.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.springframework.core.io.ClassPathResource;
import rasterfit.app.gear.CatalogueBody;
import rasterfit.app.gear.GearReader;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Source;
import rasterfit.gear.Variant;
import rasterfit.match.Intent;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.Matcher;
import rasterfit.match.PixelAspectConvention;
import rasterfit.match.WorkLimit;
import rasterfit.replay.Objection;
import rasterfit.replay.Replay;
import tools.jackson.databind.json.JsonMapper;

class WholeAnswerReplayTest {
    @Test
    void explore() throws IOException {
        Catalogue catalogue;
        try (InputStream in = new ClassPathResource("demo/catalogue.json").getInputStream()) {
            catalogue = GearReader.catalogue(JsonMapper.shared().readValue(in, CatalogueBody.class), 1);
        }
        Map<String, Integer> kinds = new TreeMap<>();
        Map<String, Integer> measures = new TreeMap<>();
        List<String> examples = new ArrayList<>();
        int perRoute = Integer.getInteger("perRoute", 5);
        for (Source source : catalogue.sources().values()) {
            for (Variant variant : source.variants()) {
                for (Display display : catalogue.displays().values()) {
                    for (DisplayInput input : display.inputs()) {
                        Display one = new Display(
                                display.id(),
                                display.name(),
                                display.displayClass(),
                                display.panel(),
                                List.of(input),
                                display.assumptions());
                        MatchRequest request = new MatchRequest(
                                source.name(),
                                variant,
                                one,
                                new MatchRequest.Equipment(true, List.of(), List.of()),
                                Intent.EVEN_WEIGHTS,
                                Map.of(),
                                List.of(),
                                PixelAspectConvention.BROADCAST,
                                MatchRequest.Explanation.SUMMARY,
                                10000,
                                perRoute);
                        long t0 = System.nanoTime();
                        MatchResult result = new Matcher(WorkLimit.DEFAULT).match(request, catalogue);
                        long t1 = System.nanoTime();
                        Replay replay =
                                new Replay(variant, one, catalogue.converters().values());
                        for (MatchResult.RankedSetup setup : result.ranked()) {
                            for (MatchResult.ModeSetting s : setup.modeSettings())
                                kinds.merge(
                                        s.settings().processing() + " "
                                                + s.settings().rateLock() + " "
                                                + s.settings().deinterlacer() + " "
                                                + s.measures().fieldStores() + " "
                                                + s.outputTiming().scan(),
                                        1,
                                        Integer::sum);
                            List<Objection> found = replay.objections(setup);
                            for (Objection o : found) {
                                if (measures.merge(o.measure(), 1, Integer::sum) <= 3)
                                    examples.add(variant.id() + " " + input.id() + " "
                                            + setup.route().stream()
                                                    .map(r -> r.id())
                                                    .toList() + o
                                            + setup.modeSettings().get(0).settings());
                            }
                        }
                        System.out.println(source.id() + " " + variant.id() + " " + display.id() + "/" + input.path()
                                + ": ranked " + result.ranked().size() + " routes " + result.counts() + " match "
                                + (t1 - t0) / 1000000 + " replay " + (System.nanoTime() - t1) / 1000000);
                    }
                }
            }
        }
        System.out.println(kinds);
        System.out.println(measures);
        examples.forEach(System.out::println);
        assertThat(measures).isEmpty();
    }
}
