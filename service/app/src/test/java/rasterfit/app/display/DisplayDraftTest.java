package rasterfit.app.display;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.app.problem.ServedTest;
import rasterfit.edid.CtaBuilder;
import rasterfit.edid.EdidBuilder;
import rasterfit.edid.EdidReader;
import rasterfit.timing.Cta861;
import rasterfit.timing.Dmt;
import rasterfit.timing.RasterTiming;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A display from the EDIDs of its ports, over HTTP. */
class DisplayDraftTest extends ServedTest {
    private static final JsonMapper JSON = JsonMapper.shared();
    private static final RasterTiming HD = Cta861.find(16).orElseThrow().timing();
    private static final RasterTiming SMALL = Cta861.find(4).orElseThrow().timing();

    private static EdidBuilder television(RasterTiming preferred, int widthMm, int heightMm) {
        return EdidBuilder.digital(3)
                .sizeCm(widthMm / 10, heightMm / 10)
                .detailed(preferred, widthMm, heightMm)
                .name("Lowick 40")
                .extension(new CtaBuilder().video(16, 4, 2).hdmi(165));
    }

    /** E-EDID A2 table 3.11: analog, separate sync; DMT 0x23 is 1280 × 1024 at 60 Hz. */
    private static byte[] vga() {
        return EdidBuilder.analog(3)
                .sizeCm(88, 50)
                .detailed(Dmt.find(0x23).orElseThrow().timing(), 885, 498)
                .rangeLimits(50, 76, 30, 83, 140)
                .build();
    }

    @Test
    void aDisplayIsMadeOfItsPortsAndTheirMenuStates() throws Exception {
        byte[] newer = television(HD, 885, 498).build();
        byte[] older = television(HD, 885, 498).features(0x0A).build();
        ObjectNode body = JSON.createObjectNode();
        ObjectNode hdmi = port(body, "HDMI", newer);
        hdmi.putArray("states").addObject().put("id", "newer");
        ((ArrayNode) hdmi.path("states"))
                .addObject()
                .put("id", "older")
                .put("edidHex", HexFormat.of().formatHex(older));
        port(body, "VGA", vga()).put("id", "analog");
        JsonNode draft = draft(body);

        JsonNode item = draft.path("item");
        assertThat(draft.path("kind").asString()).isEqualTo("displays");
        assertThat(item.path("id").asString()).isEqualTo("lowick-40");
        assertThat(item.path("name").asString()).isEqualTo("Lowick 40");
        assertThat(item.at("/panel")).isEqualTo(JSON.readTree("""
                {"kind": "GRID", "pixels": {"columns": 1920, "rows": 1080}, "sizeMm": {"width": 885, "height": 498}}"""));
        assertThat(item.at("/inputs/0/id").asString()).isEqualTo("hdmi-1");
        assertThat(item.at("/inputs/0/edidBase64").asString()).isEqualTo(base64(newer));
        assertThat(item.at("/inputs/0/states/0").has("edidBase64")).isFalse();
        assertThat(item.at("/inputs/0/states/1/edidBase64").asString()).isEqualTo(base64(older));
        assertThat(item.at("/inputs/1/connector").asString()).isEqualTo("VGA");
        assertThat(item.at("/inputs/1/edidBase64").asString()).isEqualTo(base64(vga()));
        assertThat(rules(draft)).containsExactly("edid.ports-disagree-on-grid");
        assertThat(draft.at("/findings/0/message").asString())
                .contains("analog", "1280 by 1024", "hdmi-1", "1920 by 1080");

        HttpResponse<String> written = send(request("/v1/catalogue/displays/drafted-lowick")
                .header("Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(JSON.writeValueAsString(((ObjectNode) item.deepCopy()).without("id")))));
        assertThat(written.statusCode()).as(written.body()).isEqualTo(201);
        JsonNode facts = JSON.readTree(
                        get("/v1/catalogue/displays/drafted-lowick/facts").body())
                .path("items");
        for (JsonNode fact : facts) {
            String of = fact.path("of").asString();
            boolean isAssumed = draft.path("assumed")
                    .valueStream()
                    .anyMatch(one -> one.path("written").booleanValue()
                            && one.path("of").asString().equals(of));
            assertThat(fact.path("basis").asString()).as(of).isEqualTo(isAssumed ? "ASSUMED" : "DECLARED");
        }
        assertThat(told(draft))
                .contains(
                        "class",
                        "panel/filter",
                        "panel/pixels/columns",
                        "inputs/hdmi-1/lag",
                        "inputs/hdmi-1/aspectControls",
                        "inputs/hdmi-1/overscanPercent",
                        "inputs/hdmi-1/resyncMs",
                        "inputs/analog/halfHeightProgressive");
        // 885 by 498 mm is 101 cm across, with video timings: a television, whose ordinary delay is 60 [30–120] ms.
        assertThat(assumed(draft, "class").asString()).isEqualTo("TELEVISION");
        assertThat(assumed(draft, "inputs/hdmi-1/lag"))
                .isEqualTo(JSON.readTree("{\"least\": 30, \"typical\": 60, \"greatest\": 120}"));
    }

    @Test
    void serialNumbersGoUnlessTheyAreToStay() throws Exception {
        byte[] edid = EdidBuilder.digital(4)
                .patch(0x0C, 0x78, 0x56, 0x34, 0x12)
                .detailed(HD, 885, 498)
                .displayDescriptor(0xFF, 0, 'U', 'N', 'I', 'T', '4', '7', '1', '1', '\n', ' ', ' ', ' ', ' ')
                .build();
        ObjectNode body = JSON.createObjectNode();
        port(body, "HDMI", edid);
        JsonNode draft = draft(body);
        byte[] kept =
                Base64.getDecoder().decode(draft.at("/item/inputs/0/edidBase64").asString());
        assertThat(new String(kept, StandardCharsets.ISO_8859_1)).doesNotContain("UNIT4711");
        assertThat(kept[0x0C] | kept[0x0D] | kept[0x0E] | kept[0x0F]).isZero();
        assertThat(EdidReader.read(kept)).isEqualTo(EdidReader.read(edid));
        assertThat(rules(draft)).containsExactly("edid.serial-number-removed");

        body.put("keepSerialNumbers", true);
        JsonNode whole = draft(body);
        assertThat(whole.at("/item/inputs/0/edidBase64").asString()).isEqualTo(base64(edid));
        assertThat(rules(whole)).isEmpty();
    }

    @Test
    void portsThatDisagreeAreTold() throws Exception {
        ObjectNode body = JSON.createObjectNode();
        port(body, "HDMI", television(SMALL, 700, 390).build());
        port(body, "HDMI", television(HD, 885, 498).build());
        // Within the centimetre to which sizes are rounded.
        port(body, "DVI", television(HD, 880, 490).build());
        JsonNode draft = draft(body);
        assertThat(rules(draft)).containsExactly("edid.ports-disagree-on-grid", "edid.ports-disagree-on-size");
        assertThat(draft.at("/findings/0/message").asString())
                .contains("hdmi-1", "1280 by 720", "hdmi-2", "1920 by 1080");
        assertThat(draft.at("/findings/1/message").asString()).contains("hdmi-1", "700 by 390", "885 by 498");
        assertThat(draft.at("/item/panel/pixels/columns").intValue()).isEqualTo(1920);
        assertThat(draft.at("/item/panel/sizeMm/width").intValue()).isEqualTo(885);
    }

    /** EDID 1.4, feature support bit 1 (E-EDID A2 table 3.14): the preferred timing is the native one of the panel. */
    @Test
    void aDeclaredNativeTimingIsNoAssumption() throws Exception {
        ObjectNode body = JSON.createObjectNode();
        port(body, "HDMI", EdidBuilder.digital(4).detailed(HD, 885, 498).build());
        JsonNode draft = draft(body);
        assertThat(told(draft)).doesNotContain("panel/pixels/columns");
        assertThat(draft.at("/item/provenance").toString()).contains("the native timing of the EDID of port hdmi-1");
        // Nobody named it.
        assertThat(draft.at("/item/name").asString()).isEqualTo("Display");
        assertThat(told(draft)).contains("name");
    }

    @Test
    void theCallersNameGoesFirst() throws Exception {
        ObjectNode body = JSON.createObjectNode().put("name", "In the den").put("id", "den");
        port(body, "HDMI", television(HD, 885, 498).build());
        JsonNode item = draft(body).path("item");
        assertThat(item.path("name").asString()).isEqualTo("In the den");
        assertThat(item.path("id").asString()).isEqualTo("den");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{} | 400 | missing-member | /ports",
                "{\"ports\": []} | 422 | invalid-value | /ports",
                "{\"ports\": [{\"edidHex\": \"00\"}]} | 400 | missing-member | /ports/0/connector",
                "{\"ports\": [{\"connector\": \"HDMI\"}]} | 400 | missing-member | /ports/0/edidBase64",
                "{\"ports\": [{\"connector\": \"HDMI\", \"edidHex\": \"0g\"}]} | 400 | wrong-type | /ports/0/edidHex",
                "{\"ports\": [{\"connector\": \"HDMI\", \"edidHex\": \"00\"}]} | 422 | invalid-value | /ports/0/edidHex",
                "{\"ports\": [{\"connector\": \"HDMI\", \"edidBase64\": \"*\"}]} | 400 | wrong-type | /ports/0/edidBase64",
                "{\"ports\": [{\"connector\": \"HDMI\", \"edidBase64\": \"AA==\", \"edidHex\": \"00\"}]} | 422 | invalid-value | /ports/0/edidHex",
                "{\"ports\": [{\"connector\": \"HDMI\", \"states\": [{\"id\": \"a\"}]}]} | 400 | missing-member | /ports/0/edidBase64",
                "{\"ports\": [{\"connector\": \"HDMI\", \"colour\": 1}]} | 400 | unknown-member | /ports/0/colour"
            })
    void whatIsWrongIsToldAtItsPlace(String body, int status, String code, String pointer) throws Exception {
        assertThat(pointer(problem(send(post(JSON.readTree(body))), status, code)))
                .isEqualTo(pointer);
    }

    @Test
    void aConnectorAndPortsHaveToMakeSense() throws Exception {
        ObjectNode body = JSON.createObjectNode();
        port(body, "HDNI", television(HD, 885, 498).build());
        assertThat(pointer(problem(send(post(body)), 400, "unknown-value"))).isEqualTo("/ports/0/connector");
        ObjectNode twice = JSON.createObjectNode();
        port(twice, "HDMI", television(HD, 885, 498).build()).put("id", "a");
        port(twice, "HDMI", television(HD, 885, 498).build()).put("id", "a");
        assertThat(pointer(problem(send(post(twice)), 422, "invalid-value"))).isEqualTo("/ports");
        ObjectNode bare = JSON.createObjectNode();
        port(bare, "HDMI", EdidBuilder.digital(3).features(0).build());
        assertThat(pointer(problem(send(post(bare)), 422, "invalid-value"))).isEqualTo("/ports");
    }

    private static ObjectNode port(ObjectNode body, String connector, byte[] edid) {
        ArrayNode ports = body.path("ports") instanceof ArrayNode known ? known : body.putArray("ports");
        return ports.addObject().put("connector", connector).put("edidBase64", base64(edid));
    }

    private static String base64(byte[] edid) {
        return Base64.getEncoder().encodeToString(edid);
    }

    private static List<String> rules(JsonNode draft) {
        return draft.path("findings")
                .valueStream()
                .map(finding -> finding.path("rule").asString())
                .toList();
    }

    private static List<String> told(JsonNode draft) {
        return draft.path("assumed")
                .valueStream()
                .map(fact -> fact.path("of").asString())
                .toList();
    }

    private static JsonNode assumed(JsonNode draft, String of) {
        return draft.path("assumed")
                .valueStream()
                .filter(fact -> fact.path("of").asString().equals(of))
                .findFirst()
                .orElseThrow()
                .path("value");
    }

    private JsonNode draft(JsonNode body) throws Exception {
        HttpResponse<String> answer = send(post(body));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return JSON.readTree(answer.body());
    }

    private java.net.http.HttpRequest.Builder post(JsonNode body) {
        return request("/v1/displays/drafts")
                .header("Content-Type", "application/json")
                .POST(BodyPublishers.ofString(JSON.writeValueAsString(body)));
    }
}
