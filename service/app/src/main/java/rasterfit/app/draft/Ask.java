package rasterfit.app.draft;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.Range;

/**
 * One question of a template.
 *
 * @param name of the member of the answers
 * @param question for a person
 * @param type JSON type of the answer
 * @param itemType JSON type of the elements of an array
 * @param unit of a number
 * @param required whether there is no draft without it
 * @param allowed the known values, of the answer or of its elements
 * @param least of a number, or of each of an array
 * @param greatest of a number, or of each of an array
 * @param otherwise written {@code default}: what is taken if it is not answered; absent where the engine's own default of the
 *     class holds, or where nothing is missed
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
record Ask(
        String name,
        String question,

        @Schema(allowableValues = {"string", "number", "integer", "array"})
        String type,

        @Schema(allowableValues = {"string", "integer"}) @Nullable
        String itemType,

        @Nullable String unit,
        boolean required,
        List<String> allowed,
        @Nullable BigDecimal least,
        @Nullable BigDecimal greatest,
        @JsonProperty("default") @Nullable AskDefault otherwise,
        @JsonIgnore AskForm form) {

    private static Ask of(String name, String question, String type, @Nullable String itemType, AskForm form) {
        return new Ask(name, question, type, itemType, null, false, List.of(), null, null, null, form);
    }

    static Ask text(String name, String question) {
        return of(name, question, "string", null, AskForm.TEXT);
    }

    static Ask id(String name, String question) {
        return of(name, question, "string", null, AskForm.SLUG);
    }

    static Ask connector(String name, String question) {
        return of(name, question, "string", null, AskForm.CONNECTOR);
    }

    static Ask amount(String name, String question) {
        return of(name, question, "string", null, AskForm.AMOUNT);
    }

    static Ask currency(String name, String question) {
        return of(name, question, "string", null, AskForm.CURRENCY);
    }

    static Ask choice(String name, String question, List<String> allowed) {
        return of(name, question, "string", null, AskForm.choice(allowed)).allowing(allowed);
    }

    /** One or more of them. */
    static Ask choices(String name, String question, List<String> allowed) {
        return of(name, question, "array", "string", AskForm.listOf(AskForm.choice(allowed)))
                .allowing(allowed);
    }

    /** One or more timings, {@code vic:16} or {@code dmt:0x52}. */
    static Ask timings(String name, String question) {
        return of(name, question, "array", "string", AskForm.listOf(AskForm.TIMING));
    }

    static Ask count(String name, String question, String unit, Range range) {
        return of(name, question, "integer", null, AskForm.count(range)).within(unit, range);
    }

    static Ask counts(String name, String question, String unit, Range range) {
        return of(name, question, "array", "integer", AskForm.listOf(AskForm.count(range)))
                .within(unit, range);
    }

    static Ask number(String name, String question, String unit, Range range) {
        return of(name, question, "number", null, AskForm.number(range)).within(unit, range);
    }

    /** A string with an exact quantity. */
    static Ask exact(String name, String question, String unit, Range range) {
        return of(name, question, "string", null, AskForm.exact(range)).within(unit, range);
    }

    Ask asRequired() {
        return new Ask(name, question, type, itemType, unit, true, allowed, least, greatest, otherwise, form);
    }

    Ask or(Object value, String reason, String source) {
        AskDefault taken = new AskDefault(DraftValue.of(value), reason, source);
        return new Ask(name, question, type, itemType, unit, required, allowed, least, greatest, taken, form);
    }

    private Ask allowing(List<String> values) {
        return new Ask(name, question, type, itemType, unit, required, values, least, greatest, otherwise, form);
    }

    private Ask within(String of, Range range) {
        return new Ask(
                name,
                question,
                type,
                itemType,
                of,
                required,
                allowed,
                range.least(),
                range.greatest(),
                otherwise,
                form);
    }
}
