package rasterfit.app.match;

import static org.junit.jupiter.params.provider.Arguments.arguments;
import static rasterfit.app.match.MatchRequests.converter;
import static rasterfit.app.match.MatchRequests.object;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.params.provider.Arguments;
import rasterfit.edid.EdidBuilder;
import rasterfit.match.Criterion;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Bad requests to the main call: what is wrong, the change that makes it so, and how it is answered. */
final class MatchFaults {
    private static final String MODE = "/source/modes/0";
    private static final String CONVERTER = "/equipment/converters/0";

    private MatchFaults() {}

    static Stream<Arguments> all() {
        return Stream.of(
                bad("an unknown member", set("", "colour", 1), 400, "unknown-member", "/colour"),
                bad(
                        "an unknown member far inside",
                        set(MODE + "/active", "rows", 1),
                        400,
                        "unknown-member",
                        MODE + "/active/rows"),
                bad("an unknown scan", set(MODE, "scan", "SIDEWAYS"), 400, "unknown-value", MODE + "/scan"),
                bad("an unknown intent", set("", "intent", "BEST"), 400, "unknown-value", "/intent"),
                bad(
                        "an unknown connector",
                        set("/source/outputs/0", "connector", "TRIANGLE"),
                        400,
                        "unknown-value",
                        "/source/outputs/0/connector"),
                bad("a missing display", remove("", "display"), 400, "missing-member", "/display"),
                bad("a missing scan", remove(MODE, "scan"), 400, "missing-member", MODE + "/scan"),
                bad("a missing name", remove("/source", "name"), 400, "missing-member", "/source/name"),
                bad("a clock as a number", set(MODE, "dotClockHz", 5369318), 400, "wrong-type", MODE + "/dotClockHz"),
                bad(
                        "a line length as a number",
                        set(MODE, "dotsPerLine", 341),
                        400,
                        "wrong-type",
                        MODE + "/dotsPerLine"),
                bad(
                        "a clock that is no number",
                        set(MODE, "dotClockHz", "NaN"),
                        400,
                        "wrong-type",
                        MODE + "/dotClockHz"),
                bad(
                        "a clock with an exponent",
                        set(MODE, "dotClockHz", "5e6"),
                        400,
                        "wrong-type",
                        MODE + "/dotClockHz"),
                bad("a clock over zero", set(MODE, "dotClockHz", "1/0"), 400, "wrong-type", MODE + "/dotClockHz"),
                bad(
                        "21 digits",
                        set(MODE, "dotClockHz", "100000000000000000000"),
                        400,
                        "wrong-type",
                        MODE + "/dotClockHz"),
                bad(
                        "a negative clock",
                        set(MODE, "dotClockHz", "-5369318"),
                        422,
                        "invalid-value",
                        MODE + "/dotClockHz"),
                bad("a clock of zero", set(MODE, "dotClockHz", "0"), 422, "invalid-value", MODE + "/dotClockHz"),
                bad(
                        "a clock beyond 10 GHz",
                        set(MODE, "dotClockHz", "10000000001"),
                        422,
                        "invalid-value",
                        MODE + "/dotClockHz"),
                bad(
                        "10^30 dots",
                        set(MODE + "/active", "dots", BigInteger.TEN.pow(30)),
                        422,
                        "invalid-value",
                        MODE + "/active/dots"),
                bad(
                        "10^30 dots with an exponent",
                        set(MODE + "/active", "dots", new BigDecimal("1E30")),
                        422,
                        "invalid-value",
                        MODE + "/active/dots"),
                bad(
                        "half a dot",
                        set(MODE + "/active", "dots", new BigDecimal("255.5")),
                        400,
                        "wrong-type",
                        MODE + "/active/dots"),
                bad("a number as text", set(MODE + "/active", "dots", "256"), 400, "wrong-type", MODE + "/active/dots"),
                bad(
                        "a negative first dot",
                        set(MODE + "/active", "firstDot", -1),
                        422,
                        "invalid-value",
                        MODE + "/active/firstDot"),
                bad(
                        "dots beyond the line",
                        set(MODE + "/active", "dots", 277),
                        422,
                        "invalid-value",
                        MODE + "/active/dots"),
                bad(
                        "lines beyond the field",
                        set(MODE + "/active", "lines", 245),
                        422,
                        "invalid-value",
                        MODE + "/active/lines"),
                bad("a third of a line", set(MODE, "linesPerField", "787/3"), 422, "invalid-value", MODE),
                bad(
                        "a field that is not of its standard",
                        set(MODE, "lineStandard", "L625_50"),
                        422,
                        "invalid-value",
                        MODE + "/lineStandard"),
                bad("a share of zero", set(MODE, "share", 0), 422, "invalid-value", MODE + "/share"),
                bad(
                        "a used area larger than the active one",
                        put(MODE, "used", "{\"lines\": 241}"),
                        422,
                        "invalid-value",
                        MODE + "/used/lines"),
                bad(
                        "a used area before the active one",
                        put(MODE, "used", "{\"lines\": 224, \"firstLine\": 17}"),
                        422,
                        "invalid-value",
                        MODE + "/used/firstLine"),
                bad("no modes", put("/source", "modes", "[]"), 422, "invalid-value", "/source/modes"),
                bad("no outputs", put("/source", "outputs", "[]"), 422, "invalid-value", "/source/outputs"),
                bad("65 modes", request -> repeatMode(request, 65), 422, "invalid-value", "/source/modes"),
                bad("two modes of one name", request -> repeatMode(request, 2), 422, "invalid-value", "/source/modes"),
                bad("a control character", set("/source", "name", "Quillon\u0000"), 400, "wrong-type", "/source/name"),
                bad(
                        "a name of 201 characters",
                        set("/source", "name", "q".repeat(201)),
                        422,
                        "invalid-value",
                        "/source/name"),
                bad("no source at all", put("", "source", "{}"), 400, "wrong-type", "/source"),
                bad(
                        "an unknown source",
                        put("", "source", "{\"catalogueId\": \"nowhere\"}"),
                        422,
                        "invalid-value",
                        "/source/catalogueId"),
                bad(
                        "a variant left open",
                        put("", "source", "{\"catalogueId\": \"wendrel\"}"),
                        400,
                        "missing-member",
                        "/source/variantId"),
                bad(
                        "an unknown variant",
                        put("", "source", "{\"catalogueId\": \"wendrel\", \"variantId\": \"x\"}"),
                        422,
                        "invalid-value",
                        "/source/variantId"),
                bad(
                        "an unknown display",
                        put("", "display", "{\"catalogueId\": \"nowhere\"}"),
                        422,
                        "invalid-value",
                        "/display/catalogueId"),
                bad(
                        "an unknown input",
                        put("", "display", "{\"catalogueId\": \"lowick-40\", \"input\": \"x\"}"),
                        422,
                        "invalid-value",
                        "/display/input"),
                bad(
                        "two ways to name a display",
                        set("/display", "catalogueId", "lowick-40"),
                        400,
                        "wrong-type",
                        "/display"),
                bad(
                        "an EDID that is no base64",
                        set("/display", "edidBase64", "AP//*"),
                        400,
                        "wrong-type",
                        "/display/edidBase64"),
                bad("an EDID of 100 bytes", edid(new byte[100]), 422, "invalid-value", "/display/edidBase64"),
                bad("an empty EDID", edid(new byte[0]), 422, "invalid-value", "/display/edidBase64"),
                bad("an EDID of 32896 bytes", edid(new byte[32896]), 422, "invalid-value", "/display/edidBase64"),
                bad("an EDID without a header", edid(new byte[128]), 422, "invalid-value", "/display/edidBase64"),
                bad(
                        "an EDID without a preferred timing",
                        edid(EdidBuilder.digital(3).build()),
                        422,
                        "invalid-value",
                        "/display/edidBase64"),
                bad(
                        "a collection",
                        set("/equipment", "collectionId", "mine"),
                        422,
                        "invalid-value",
                        "/equipment/collectionId"),
                bad(
                        "a panel of a few pixels",
                        display("{\"columns\": 2, \"rows\": 2}"),
                        422,
                        "invalid-value",
                        "/display/panel/pixels/columns",
                        "/display/panel/pixels/rows"),
                bad(
                        "a panel like a ribbon",
                        display("{\"columns\": 4097, \"rows\": 1024}"),
                        422,
                        "invalid-value",
                        "/display/panel/pixels"),
                bad(
                        "an unknown kind of processing",
                        inConverter("/processing/0", "kind", "MAGIC"),
                        400,
                        "unknown-value",
                        CONVERTER + "/processing/0"),
                bad(
                        "a member of another kind",
                        inConverter("/processing/0", "timings", "vic:16"),
                        400,
                        "unknown-member",
                        CONVERTER + "/processing/0/timings"),
                bad("a fact as text", inConverter("", "resyncMs", "900"), 400, "wrong-type", CONVERTER + "/resyncMs"),
                bad(
                        "an analog input without a digitiser",
                        request -> converterIn(request, "/inputs/0").remove("digitiser"),
                        400,
                        "missing-member",
                        CONVERTER + "/inputs/0/digitiser"),
                bad(
                        "an output without a kind",
                        request -> converterIn(request, "/outputs/0").remove("link"),
                        400,
                        "wrong-type",
                        CONVERTER + "/outputs/0"),
                bad(
                        "a sync on a digital output",
                        inConverter("/outputs/0", "sync", "SEPARATE_SYNC"),
                        422,
                        "invalid-value",
                        CONVERTER + "/outputs/0/sync"),
                bad(
                        "a TMDS clock as a number",
                        inConverter("/outputs/0", "maxTmdsClockHz", 165),
                        400,
                        "wrong-type",
                        CONVERTER + "/outputs/0/maxTmdsClockHz"),
                bad(
                        "lines that are no multiple",
                        request -> ((ArrayNode) converterIn(request, "/processing/0/lines/0")
                                        .get("to"))
                                .add(700),
                        422,
                        "invalid-value",
                        CONVERTER + "/processing/0/lines/0/to/1"),
                bad("weights of zero", request -> zeroWeights(request), 422, "invalid-value", "/weights"),
                bad(
                        "a negative weight",
                        put("", "weights", "{\"latency\": -1}"),
                        422,
                        "invalid-value",
                        "/weights/latency"),
                bad(
                        "a weight for nothing known",
                        put("", "weights", "{\"beauty\": 1}"),
                        400,
                        "unknown-member",
                        "/weights/beauty"),
                bad(
                        "an unknown measure",
                        limit("{\"measure\": \"lag\", \"atMost\": 5}"),
                        400,
                        "unknown-value",
                        "/limits/0/measure"),
                bad(
                        "an unknown figure",
                        limit("{\"measure\": \"addedLatencyMs.mean\", \"atMost\": 5}"),
                        400,
                        "unknown-value",
                        "/limits/0/measure"),
                bad(
                        "a figure of what has none",
                        limit("{\"measure\": \"croppedLines.top\", \"atMost\": 5}"),
                        400,
                        "unknown-value",
                        "/limits/0/measure"),
                bad(
                        "a limit without a bound",
                        limit("{\"measure\": \"croppedLines\"}"),
                        400,
                        "wrong-type",
                        "/limits/0"),
                bad(
                        "a limit with both bounds",
                        limit("{\"measure\": \"croppedLines\", \"atMost\": 5, \"atLeast\": 1}"),
                        400,
                        "wrong-type",
                        "/limits/0"),
                bad(
                        "a price as a number",
                        limit("{\"measure\": \"price\", \"atMost\": 200, \"currency\": \"EUR\"}"),
                        400,
                        "wrong-type",
                        "/limits/0/atMost"),
                bad(
                        "a price without a currency",
                        limit("{\"measure\": \"price\", \"atMost\": \"200.00\"}"),
                        400,
                        "missing-member",
                        "/limits/0/currency"),
                bad(
                        "an unknown grade",
                        limit("{\"measure\": \"acceptance\", \"atLeast\": \"GOOD\"}"),
                        400,
                        "unknown-value",
                        "/limits/0/atLeast"),
                bad("33 limits", limits(33), 422, "invalid-value", "/limits"),
                bad("none of the setups", set("", "top", 0), 422, "invalid-value", "/top"),
                bad("1001 setups", set("", "top", 1001), 422, "invalid-value", "/top"));
    }

    private static Arguments bad(
            String what, Consumer<ObjectNode> change, int status, String code, String... pointers) {
        return arguments(what, change, status, code, List.of(pointers));
    }

    private static Consumer<ObjectNode> display(String pixels) {
        return put(
                "",
                "display",
                "{\"panel\": {\"kind\": \"GRID\", \"pixels\": " + pixels
                        + "}, \"inputs\": [{\"timings\": [\"vic:16\"]}]}");
    }

    static Consumer<ObjectNode> set(String place, String member, Object value) {
        return request -> object(request, place).putPOJO(member, value);
    }

    private static Consumer<ObjectNode> put(String place, String member, String json) {
        return request -> object(request, place).set(member, MatchRequests.JSON.readTree(json));
    }

    private static Consumer<ObjectNode> remove(String place, String member) {
        return request -> object(request, place).remove(member);
    }

    private static Consumer<ObjectNode> edid(byte[] bytes) {
        return set("/display", "edidBase64", Base64.getEncoder().encodeToString(bytes));
    }

    static Consumer<ObjectNode> limit(String json) {
        return put("", "limits", "[" + json + "]");
    }

    private static Consumer<ObjectNode> limits(int count) {
        String[] all = new String[count];
        Arrays.fill(all, "{\"measure\": \"croppedLines\", \"atMost\": 5}");
        return limit(String.join(",", all));
    }

    private static Consumer<ObjectNode> inConverter(String place, String member, Object value) {
        return request -> converterIn(request, place).putPOJO(member, value);
    }

    private static ObjectNode converterIn(ObjectNode request, String place) {
        ((ArrayNode) request.at("/equipment/converters")).add(converter());
        return object(request, CONVERTER + place);
    }

    private static void repeatMode(ObjectNode request, int times) {
        ArrayNode modes = (ArrayNode) request.at("/source/modes");
        while (modes.size() < times) {
            modes.add(modes.get(0).deepCopy());
        }
    }

    private static void zeroWeights(ObjectNode request) {
        ObjectNode weights = request.putObject("weights");
        for (Criterion criterion : Criterion.values()) {
            weights.put(criterion.id(), 0);
        }
    }
}
