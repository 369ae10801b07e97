package rasterfit.match.property;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.sessions.JqwikSession;
import rasterfit.edid.EdidBuilder;
import rasterfit.edid.EdidReader;
import rasterfit.match.Intent;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchRequest.Explanation;
import rasterfit.match.MatchResult;

/**
 * Prints one line for each of a number of random requests: a digest of the request, one of its answer, and the number of
 * its setups; then one for what is read from random EDIDs. Run in a virtual machine of its own, it tells whether answers depend on anything but the request.
 */
public final class AnswerDigests {
    static final int REQUESTS = 16;
    private static final byte CTA_EXTENSION = 0x02;

    private AnswerDigests() {}

    /**
     * Prints the lines.
     *
     * @param args seed of the requests
     */
    public static void main(String[] args) {
        of(Long.parseLong(args[0])).forEach(System.out::println);
    }

    static List<String> of(long seed) {
        List<String> lines = new ArrayList<>();
        JqwikSession.run(() -> {
            Arbitrary<MatchRequest> requests = new GearArbitraries().requests();
            var generator = requests.generator(1000, false);
            Random random = new Random(seed);
            for (int i = 0; i < REQUESTS; i++) {
                MatchRequest request = explained(generator.next(random).value(), i);
                MatchResult result = Ranking.match(request);
                lines.add(Rendering.digest(written(request)) + " " + Rendering.digest(Rendering.of(result)) + " "
                        + result.ranked().size());
            }
        });
        lines.add("EDIDs " + edids(seed));
        return lines;
    }

    /** One digest over what is read from blocks of random bytes, with all their defects in words. */
    private static String edids(long seed) {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 200; i++) {
            byte[] edid = new byte[EdidReader.BLOCK_BYTES * (1 + random.nextInt(3))];
            random.nextBytes(edid);
            byte[] header = {0, -1, -1, -1, -1, -1, -1, 0};
            System.arraycopy(header, 0, edid, 0, header.length);
            if (edid.length > EdidReader.BLOCK_BYTES && random.nextBoolean()) {
                edid[EdidReader.BLOCK_BYTES] = CTA_EXTENSION;
            }
            text.append(Rendering.of(EdidReader.read(EdidBuilder.withChecksums(edid))));
        }
        return Rendering.digest(text.toString());
    }

    /** Every intent, with all steps told, so that the answer holds all the words that it can hold. */
    private static MatchRequest explained(MatchRequest request, int number) {
        Intent[] intents = Intent.values();
        MatchRequest intended = Altered.with(request, "intent", intents[number % intents.length]);
        return Altered.settingsPerRoute(Altered.with(intended, "explain", Explanation.FULL), 2);
    }

    /** The weights come in a map without order; in a request that means nothing. */
    private static String written(MatchRequest request) {
        return Rendering.of(Altered.with(request, "weights", Map.of()))
                + Rendering.of(new TreeMap<>(request.weights()));
    }
}
