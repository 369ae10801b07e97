package rasterfit.app.display;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.http.MediaType;
import rasterfit.app.fuzz.EdidSeeds;
import rasterfit.app.fuzz.Memory;
import rasterfit.app.problem.FuzzJson;
import rasterfit.app.problem.ProblemException;
import rasterfit.edid.EdidReader;
import rasterfit.edid.EdidReading;
import rasterfit.gear.SinkLimitsReader;

/** Any bytes, read as an EDID, end in an answer: the same each time, in bounded time and memory. */
class DecodeFuzz {
    /** What reading and answering once may allocate for the longest EDID (measured, with room). */
    private static final long MOST_BYTES = 64L << 20;

    private static final int MOST_DEFECTS = 256;

    /** More timings than bytes only come from flags of one bit each: 17 + 44 established, 4 × 4 × 5 CVT codes. */
    private static final int MOST_TIMINGS_BY_FLAGS = 256;

    static Stream<Arguments> seeds() {
        return EdidSeeds.all().entrySet().stream()
                .map(seed -> arguments(Named.of(seed.getKey(), (Object) seed.getValue())));
    }

    @MethodSource("seeds")
    @FuzzTest
    @Timeout(60)
    void anyBytesAreAnswered(byte[] bytes) {
        byte[] given = bytes.clone();
        String first = read(bytes);
        assertThat(Arrays.equals(bytes, given)).as("the bytes are left alone").isTrue();
        // The second reading is measured, since the first may also load classes.
        assertThat(Memory.within(MOST_BYTES, () -> read(bytes))).isEqualTo(first);
        String answer = answer(MediaType.APPLICATION_OCTET_STREAM, bytes);
        if (EdidReader.isWholeNumberOfBlocks(bytes.length)) {
            assertThat(answer).isEqualTo(first);
        }
        answer(MediaType.TEXT_PLAIN, bytes);
    }

    private static String read(byte[] bytes) {
        EdidReading reading = EdidReader.read(bytes);
        assertThat(reading.timings()).hasSizeLessThanOrEqualTo(MOST_TIMINGS_BY_FLAGS + bytes.length);
        assertThat(reading.defects()).hasSizeLessThanOrEqualTo(MOST_DEFECTS);
        assertThat(SinkLimitsReader.accepts(reading)).isNotEmpty();
        assertThat(SinkLimitsReader.analogLineRate(reading) == null).isEqualTo(reading.rangeLimits() == null);
        assertThat(SinkLimitsReader.analogFieldRate(reading) == null).isEqualTo(reading.rangeLimits() == null);
        assertThat(SinkLimitsReader.read(reading)).isEqualTo(SinkLimitsReader.read(EdidReader.read(bytes)));
        return FuzzJson.written(DecodedDisplay.of(reading));
    }

    private static String answer(MediaType type, byte[] body) {
        try {
            return FuzzJson.written(new DecodeController().decode(type, body));
        } catch (ProblemException refused) {
            return FuzzJson.told(refused);
        }
    }
}
