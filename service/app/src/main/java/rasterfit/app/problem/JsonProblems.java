package rasterfit.app.problem;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.TokenStreamContext;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.InputCoercionException;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.core.exc.StreamReadException;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.exc.InvalidNullException;
import tools.jackson.databind.exc.InvalidTypeIdException;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.UnrecognizedPropertyException;

/**
 * What the JSON reader reports, as problems in words of our own: the reader's messages name classes. What it tells
 * only in a message is recognised by that message, and a test pins it.
 */
final class JsonProblems {

    private JsonProblems() {}

    /** Null when the defect is ours and not the client's. */
    static @Nullable ProblemException of(JacksonException thrown) {
        String pointer = Pointers.of(thrown.getPath());
        ProblemException own = ownCause(thrown);
        if (own != null) {
            return own.within(pointer);
        }
        if (thrown instanceof StreamConstraintsException) {
            return tooComplex(thrown);
        }
        if (thrown instanceof InputCoercionException overflow) {
            return Problems.outOfRange(pointer, "The number is out of range.", rangeOf(overflow.getTargetType()));
        }
        if (thrown instanceof StreamReadException) {
            return unreadable(thrown);
        }
        if (thrown instanceof UnrecognizedPropertyException unknown) {
            return one(
                    ProblemType.UNKNOWN_MEMBER,
                    pointer,
                    "Unknown member \"" + unknown.getPropertyName() + "\"; known here: "
                            + sorted(unknown.getKnownPropertyIds()) + ".");
        }
        if (thrown instanceof InvalidTypeIdException unknown) {
            return unknownKind(pointer, unknown);
        }
        if (thrown instanceof InvalidNullException) {
            return one(ProblemType.MISSING_MEMBER, pointer, "Must not be null.");
        }
        if (thrown instanceof InvalidFormatException misformed && isEnum(misformed.getTargetType())) {
            // A name in an object is not yet part of the path when it is itself what cannot be read.
            return unknownEnumValue(
                    misformed.getCurrentToken() == JsonToken.PROPERTY_NAME ? placeOf(thrown) : pointer, misformed);
        }
        if (thrown instanceof MismatchedInputException mismatch) {
            return mismatched(pointer, mismatch);
        }
        if (thrown.getCause() instanceof NumberFormatException) {
            return Problems.invalid(pointer, "The number is out of range.");
        }
        String refusal = refusal(thrown.getCause());
        return refusal == null ? null : Problems.invalid(pointer, refusal);
    }

    private static @Nullable ProblemException ownCause(Throwable thrown) {
        for (Throwable cause = thrown.getCause(); cause != null; cause = cause.getCause()) {
            if (cause instanceof ProblemException own) {
                return own;
            }
        }
        return null;
    }

    /**
     * What the constructor of a value of ours said when it refused its arguments. Anything else thrown by it is a
     * defect: its message may name classes and the client cannot mend it.
     */
    private static @Nullable String refusal(@Nullable Throwable cause) {
        if (cause == null || cause.getMessage() == null || cause.getStackTrace().length < 2) {
            return null;
        }
        StackTraceElement[] trace = cause.getStackTrace();
        boolean argument = cause instanceof IllegalArgumentException || cause instanceof ArithmeticException;
        if (argument && isOurs(trace[0])) {
            return cause.getMessage();
        }
        boolean required = cause instanceof NullPointerException
                && trace[0].getClassName().equals(Objects.class.getName())
                && isOurs(trace[1]);
        return required ? "A value is needed: " + cause.getMessage() : null;
    }

    private static boolean isOurs(StackTraceElement frame) {
        return frame.getClassName().startsWith("rasterfit.");
    }

    private static ProblemException tooComplex(JacksonException thrown) {
        if (thrown.getOriginalMessage().startsWith("Document nesting depth")) {
            return Problems.of(
                    ProblemType.JSON_TOO_COMPLEX,
                    List.of(ProblemError.at(
                            "",
                            "The JSON is nested deeper than " + StrictJson.GREATEST_DEPTH + " levels.",
                            Integer.toString(StrictJson.GREATEST_DEPTH))));
        }
        return one(
                ProblemType.JSON_TOO_COMPLEX,
                placeOf(thrown),
                "A number is longer than " + StrictJson.GREATEST_NUMBER_LENGTH + " or a member's name longer than "
                        + StrictJson.GREATEST_NAME_LENGTH + " characters.");
    }

    private static ProblemException unreadable(JacksonException thrown) {
        String message = String.valueOf(thrown.getOriginalMessage());
        if (message.startsWith("Duplicate Object property")) {
            return one(ProblemType.DUPLICATE_MEMBER, placeOf(thrown), "The member occurs twice.");
        }
        TokenStreamLocation location = thrown.getLocation();
        String where = location == null || location.getLineNr() < 1
                ? ""
                : " at line " + location.getLineNr() + ", column " + location.getColumnNr();
        return new ProblemException(ProblemType.MALFORMED_JSON, "The body is not well-formed JSON" + where + ".");
    }

    private static String placeOf(JacksonException thrown) {
        return thrown.processor() instanceof JsonParser parser
                ? parser.streamReadContext().pathAsPointer().toString()
                : Pointers.of(thrown.getPath());
    }

    private static ProblemException unknownEnumValue(String pointer, InvalidFormatException thrown) {
        String allowed = Arrays.stream(thrown.getTargetType().getEnumConstants())
                .map(constant -> ((Enum<?>) constant).name())
                .collect(Collectors.joining(", "));
        if (thrown.getValue() instanceof String value) {
            return one(
                    ProblemType.UNKNOWN_VALUE,
                    pointer,
                    "Unknown value \"" + value + "\"; known here: " + allowed + ".");
        }
        return Problems.wrongType(pointer, "one of the strings " + allowed);
    }

    private static ProblemException unknownKind(String pointer, InvalidTypeIdException thrown) {
        JsonSubTypes kinds = thrown.getBaseType().getRawClass().getAnnotation(JsonSubTypes.class);
        String known = kinds == null
                ? ""
                : Arrays.stream(kinds.value()).map(JsonSubTypes.Type::name).collect(Collectors.joining(", "));
        if (thrown.getTypeId() == null) {
            JsonTypeInfo told = thrown.getBaseType().getRawClass().getAnnotation(JsonTypeInfo.class);
            String member = told == null ? "" : "\"" + told.property() + "\" ";
            return one(
                    ProblemType.MISSING_MEMBER,
                    pointer,
                    "The member " + member + "that names the kind is needed; kinds: " + known + ".");
        }
        return one(
                ProblemType.UNKNOWN_VALUE,
                pointer,
                "Unknown kind \"" + thrown.getTypeId() + "\"; known here: " + known + ".");
    }

    private static ProblemException mismatched(String pointer, MismatchedInputException thrown) {
        if (somethingFollows(thrown)) {
            return new ProblemException(
                    ProblemType.MALFORMED_JSON, "The body holds something after the end of its JSON value.");
        }
        JsonToken token = thrown.getCurrentToken();
        if (token == JsonToken.END_OBJECT || token == JsonToken.VALUE_NULL) {
            return one(ProblemType.MISSING_MEMBER, pointer, "A value is needed.");
        }
        return Problems.wrongType(pointer, nameOf(thrown.getTargetType()) + ", found " + nameOf(token));
    }

    /** True when the reader was past the one value of the body; its message is all else that would tell. */
    private static boolean somethingFollows(MismatchedInputException thrown) {
        if (!thrown.getPath().isEmpty() || !(thrown.processor() instanceof JsonParser parser)) {
            return false;
        }
        TokenStreamContext context = parser.streamReadContext();
        while (context.getParent() != null) {
            context = context.getParent();
        }
        return context.getCurrentIndex() > 0;
    }

    private static String nameOf(@Nullable JsonToken token) {
        if (token == null) {
            return "something else";
        }
        return switch (token) {
            case START_OBJECT, PROPERTY_NAME -> "an object";
            case START_ARRAY -> "an array";
            case VALUE_STRING -> "a string";
            case VALUE_NUMBER_INT -> "an integer";
            case VALUE_NUMBER_FLOAT -> "a number with a fraction or exponent";
            case VALUE_TRUE, VALUE_FALSE -> "a boolean";
            default -> "something else";
        };
    }

    private static String nameOf(@Nullable Class<?> target) {
        if (target == null) {
            return "another type";
        } else if (target == String.class) {
            return "a string";
        } else if (target == Boolean.class || target == boolean.class) {
            return "true or false";
        } else if (!rangeOf(target).isEmpty()) {
            return "an integer";
        } else if (target == Double.class || target == double.class || target == BigDecimal.class) {
            return "a number";
        } else if (target.isArray() || Collection.class.isAssignableFrom(target)) {
            return "an array";
        } else if (isEnum(target)) {
            return "a string";
        } else if (target.isRecord() || Map.class.isAssignableFrom(target)) {
            return "an object";
        }
        return "another type";
    }

    private static String rangeOf(Class<?> target) {
        if (target == Integer.class || target == int.class) {
            return Integer.MIN_VALUE + ".." + Integer.MAX_VALUE;
        } else if (target == Long.class || target == long.class) {
            return Long.MIN_VALUE + ".." + Long.MAX_VALUE;
        }
        return "";
    }

    private static boolean isEnum(@Nullable Class<?> target) {
        return target != null && target.isEnum();
    }

    private static String sorted(@Nullable Collection<Object> names) {
        return names == null
                ? "none"
                : names.stream().map(String::valueOf).sorted().collect(Collectors.joining(", "));
    }

    private static ProblemException one(ProblemType type, String pointer, String message) {
        return Problems.of(type, List.of(ProblemError.at(pointer, message)));
    }
}
