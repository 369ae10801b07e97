package rasterfit.app.match;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.code_intelligence.jazzer.mutation.annotation.NotNull;
import com.code_intelligence.jazzer.mutation.annotation.WithLength;
import com.code_intelligence.jazzer.mutation.annotation.WithSize;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rasterfit.app.fuzz.EdidSeeds;
import rasterfit.app.fuzz.RequestSeeds;
import tools.jackson.databind.node.ObjectNode;

/**
 * Requests that were good before some of their values were changed, most of which get past the readers and into the
 * engine; some with an EDID as the display.
 */
class RequestEditFuzz {
    private static final MatchTarget TARGET = new MatchTarget();
    private static final List<ObjectNode> REQUESTS = RequestSeeds.all();
    private static final RequestEditor EDITOR = new RequestEditor(REQUESTS, RequestSeeds.demo());

    static Stream<Arguments> seeds() {
        List<Arguments> seeds = new ArrayList<>();
        for (int request = 0; request < REQUESTS.size(); request++) {
            seeds.add(arguments(request, List.of(), new byte[0]));
        }
        int number = 0;
        for (byte[] edid : EdidSeeds.all().values()) {
            // The first request has a converter that fits most displays.
            int request = number % 2 == 0 ? 0 : number % REQUESTS.size();
            seeds.add(arguments(request, List.of(), edid));
            number++;
        }
        return seeds.stream();
    }

    /** @param edid replaces the display, unless it is empty */
    @MethodSource("seeds")
    @FuzzTest
    @Timeout(60)
    void anEditedRequestIsAnsweredOrRefused(
            int request,
            @NotNull @WithSize(max = 12) List<@NotNull Edit> edits,
            byte @NotNull @WithLength(max = 1024) [] edid) {
        ObjectNode body = REQUESTS.get(Math.floorMod(request, REQUESTS.size())).deepCopy();
        if (edid.length > 0) {
            body.putObject("display").put("edidBase64", Base64.getEncoder().encodeToString(edid));
        }
        edits.forEach(edit -> EDITOR.apply(edit, body));
        TARGET.check(body.toString().getBytes(UTF_8));
    }
}
