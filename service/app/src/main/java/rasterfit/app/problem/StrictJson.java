package rasterfit.app.problem;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.Nulls;
import org.springframework.boot.jackson.autoconfigure.JsonFactoryBuilderCustomizer;
import org.springframework.boot.jackson.autoconfigure.JsonMapperBuilderCustomizer;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.json.JsonFactoryBuilder;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.cfg.CoercionAction;
import tools.jackson.databind.cfg.CoercionInputShape;
import tools.jackson.databind.cfg.EnumFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.type.LogicalType;

/**
 * JSON is read as written or refused: no unknown member, no repeated member, no value turned into another type, no
 * number beyond its range, nothing after the end. It is written in the declared order of members, absent rather than
 * null.
 */
@Component
@Order(Ordered.LOWEST_PRECEDENCE)
final class StrictJson implements JsonMapperBuilderCustomizer, JsonFactoryBuilderCustomizer {

    /** Deepest nesting read; the deepest request needs fewer than ten levels (assumption, with room). */
    static final int GREATEST_DEPTH = 64;

    /** Longest number read, in characters; the exact rates of the trade need fewer than thirty (assumption, with room). */
    static final int GREATEST_NUMBER_LENGTH = 100;

    /** Longest member name read, in characters (assumption, with room). */
    static final int GREATEST_NAME_LENGTH = 1000;

    @Override
    public void customize(JsonMapper.Builder builder) {
        builder.enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                // Numbers without exponent, as a person would write them.
                .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
                .enable(
                        DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES,
                        DeserializationFeature.FAIL_ON_TRAILING_TOKENS,
                        DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES,
                        DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY,
                        DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                .disable(
                        DeserializationFeature.ACCEPT_FLOAT_AS_INT,
                        DeserializationFeature.ACCEPT_SINGLE_VALUE_AS_ARRAY,
                        DeserializationFeature.ACCEPT_EMPTY_STRING_AS_NULL_OBJECT)
                .enable(EnumFeature.FAIL_ON_NUMBERS_FOR_ENUMS)
                // Names, so that a toString for people never changes the contract.
                .disable(EnumFeature.READ_ENUMS_USING_TO_STRING, EnumFeature.WRITE_ENUMS_USING_TO_STRING)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS, MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
                .withCoercionConfigDefaults(coercions -> coercions
                        .setCoercion(CoercionInputShape.EmptyString, CoercionAction.Fail)
                        .setCoercion(CoercionInputShape.EmptyArray, CoercionAction.Fail))
                .withCoercionConfig(
                        LogicalType.Textual,
                        coercions -> coercions
                                .setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail)
                                .setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
                                .setCoercion(CoercionInputShape.Float, CoercionAction.Fail))
                .changeDefaultNullHandling(nulls -> nulls.withContentNulls(Nulls.FAIL))
                .changeDefaultPropertyInclusion(
                        inclusion -> inclusion.withValueInclusion(JsonInclude.Include.NON_ABSENT))
                .addModule(new SimpleModule("finite-doubles")
                        .addDeserializer(Double.class, new FiniteDoubleDeserializer(false))
                        .addDeserializer(Double.TYPE, new FiniteDoubleDeserializer(true)));
    }

    @Override
    public void customize(JsonFactoryBuilder builder) {
        builder.streamReadConstraints(StreamReadConstraints.builder()
                .maxNestingDepth(GREATEST_DEPTH)
                .maxNumberLength(GREATEST_NUMBER_LENGTH)
                .maxNameLength(GREATEST_NAME_LENGTH)
                .build());
    }
}
