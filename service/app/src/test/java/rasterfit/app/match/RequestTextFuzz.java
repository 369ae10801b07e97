package rasterfit.app.match;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rasterfit.app.fuzz.RequestSeeds;

/** Any bytes, sent as the body of a match, are answered or refused. */
class RequestTextFuzz {
    private static final MatchTarget TARGET = new MatchTarget();

    static Stream<Arguments> seeds() {
        return RequestSeeds.all().stream()
                .map(request -> arguments((Object) request.toString().getBytes(UTF_8)));
    }

    @MethodSource("seeds")
    @FuzzTest
    @Timeout(60)
    void anyBodyIsAnsweredOrRefused(byte[] body) {
        TARGET.check(body);
    }
}
