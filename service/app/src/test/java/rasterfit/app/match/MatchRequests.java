package rasterfit.app.match;

import java.util.Base64;
import java.util.function.Consumer;
import rasterfit.edid.CtaBuilder;
import rasterfit.edid.EdidBuilder;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Requests for tests: a good one, and changes to it. */
final class MatchRequests {
    static final JsonMapper JSON = JsonMapper.shared();

    /** 1920 × 1080 progressive at 60 Hz, as CTA-861-I table 1 prints VIC 16. */
    static final RasterTiming FULL_HD = new RasterTiming(
            Frequency.ofHz(148_500_000),
            1920,
            88,
            44,
            148,
            1080,
            4,
            5,
            36,
            1125,
            Scan.PROGRESSIVE,
            Polarity.POSITIVE,
            Polarity.POSITIVE);

    private MatchRequests() {}

    /** An invented television of 886 × 498 mm with VIC 16 and 4, written from the standard's tables. */
    static byte[] televisionEdid() {
        return EdidBuilder.digital(3)
                .product("RFT", 7)
                .sizeCm(89, 50)
                .detailed(FULL_HD, 886, 498)
                .rangeLimits(49, 61, 15, 68, 150)
                .extension(new CtaBuilder().video(16, 4).hdmi(165))
                .build();
    }

    /** A console of 240 lines with square-cornered numbers of the trade's 525-line kind, on the television above. */
    static ObjectNode good() {
        ObjectNode request = (ObjectNode) JSON.readTree("""
                { "display": {},
                  "source": { "name": "Quillon 16",
                    "outputs": [ {"connector": "SCART", "format": "RGB", "sync": "SYNC_ON_COMPOSITE", "level": "VIDEO_75_OHM"} ],
                    "modes": [ {"name": "240 lines", "lineStandard": "L525_60", "dotClockHz": "59062500/11",
                                "dotsPerLine": "341", "linesPerField": "262", "scan": "PROGRESSIVE", "share": 1.0,
                                "active": {"dots": 256, "lines": 240, "firstDot": 65, "firstLine": 18}} ] },
                  "equipment": { "fromCatalogue": false, "converters": [], "links": [] } }
                """);
        object(request, "/display").put("edidBase64", Base64.getEncoder().encodeToString(televisionEdid()));
        return request;
    }

    static ObjectNode changed(Consumer<ObjectNode> change) {
        ObjectNode request = good();
        change.accept(request);
        return request;
    }

    static ObjectNode object(ObjectNode request, String pointer) {
        return (ObjectNode) request.at(pointer);
    }

    /** A converter that doubles 240 lines, in the written form. */
    static ObjectNode converter() {
        return (ObjectNode) JSON.readTree("""
                { "name": "Tarn",
                  "inputs": [ {"connector": "SCART", "accepts": [ {"format": "RGB", "syncs": ["SYNC_ON_COMPOSITE"]} ],
                               "digitiser": {"maxSampleRateHz": "110000000", "samplesPerLine": {"min": 640, "max": 2047},
                                             "clockJitterNs": 0.5}} ],
                  "processing": [ {"kind": "LINE_REPEAT", "pipelineUs": 2,
                                   "lines": [ {"lineStandard": "L525_60", "from": 240, "to": [480]} ]} ],
                  "outputs": [ {"connector": "HDMI", "link": "HDMI"} ] }
                """);
    }
}
