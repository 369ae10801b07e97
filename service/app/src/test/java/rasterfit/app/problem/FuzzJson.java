package rasterfit.app.problem;

import static org.assertj.core.api.Assertions.assertThat;

import tools.jackson.core.JacksonException;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.json.JsonFactoryBuilder;
import tools.jackson.core.json.JsonWriteFeature;
import tools.jackson.databind.json.JsonMapper;

/** Reads bodies and writes answers by the rules of {@link StrictJson}, without the framework around it. */
public final class FuzzJson {
    private static final JsonMapper STRICT = strict();

    private FuzzJson() {}

    /**
     * The value of a body.
     *
     * @throws ProblemException if the body is refused; any other exception is a defect
     */
    public static <T> T read(byte[] body, Class<T> type) {
        T value;
        try {
            value = STRICT.readValue(body, type);
        } catch (JacksonException refused) {
            throw Problems.unreadable(refused);
        }
        if (value == null) {
            throw new ProblemException(ProblemType.MISSING_BODY, "The request needs a body and has none.");
        }
        return value;
    }

    /** The answer as JSON, which can be read again: numbers that JSON does not have cannot. */
    public static String written(Object answer) {
        String json = STRICT.writeValueAsString(answer);
        assertThat(STRICT.readTree(json).isMissingNode()).isFalse();
        return json;
    }

    /** What a client is told of a problem, which may blame neither the service nor its load. */
    public static String told(ProblemException problem) {
        assertThat(problem.type().status()).as(problem.detail()).isBetween(400, 499);
        return written(Problem.of(problem, null, null));
    }

    private static JsonMapper strict() {
        StrictJson rules = new StrictJson();
        JsonFactoryBuilder factory = JsonFactory.builder();
        rules.customize(factory);
        // As bare words, so that reading them back fails.
        JsonMapper.Builder mapper = JsonMapper.builder(
                factory.disable(JsonWriteFeature.WRITE_NAN_AS_STRINGS).build());
        rules.customize(mapper);
        return mapper.build();
    }
}
