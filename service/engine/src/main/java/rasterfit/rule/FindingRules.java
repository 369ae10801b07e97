package rasterfit.rule;

import java.util.List;

/** What is said about setups that work. */
public final class FindingRules {
    public static final Rule SOURCE_BANDWIDTH = assumed(
            "assumed.source-bandwidth",
            Stage.SOURCE_OUTPUT,
            "The bandwidth of a console's output is taken as 1.5 [0.75–3] times its dot clock where it is not stated.");
    public static final Rule USED_AREA = assumed(
            "assumed.used-area",
            Stage.SOURCE_OUTPUT,
            "The area really drawn is taken as centred, or as the whole active area, where it is not stated.");
    public static final Rule CABLE_BANDWIDTH = assumed(
            "assumed.cable-bandwidth",
            Stage.CABLE,
            "A cable's bandwidth is taken as 100 [50–300] MHz where it is not stated.");
    public static final Rule COLOUR_ENCODING = assumed(
            "assumed.colour-encoding",
            Stage.SOURCE_OUTPUT,
            "Where it is not stated, the colour encoding of a composite kind is the usual one of the line standard, and an input"
                    + " decodes the two usual ones: 3.58 MHz with 525 lines, 4.43 MHz with 625.");
    public static final Rule COLOUR_DECODER = assumed(
            "assumed.colour-decoder",
            Stage.CABLE,
            "Luma behind a notch is taken as 3.0 [2.5–3.5] MHz, chroma of a composite kind as 0.6 [0.5–1.3] MHz, and a decoder that"
                    + " does not state otherwise as one with a notch.");
    public static final Rule PLAIN_LEAD = assumed(
            "assumed.plain-lead",
            Stage.CABLE,
            "Two equal connectors are taken to be joined by a plain lead, which is neither chosen nor priced.");
    public static final Rule DIGITISER_JITTER = assumed(
            "assumed.digitiser-jitter",
            Stage.CONVERTER,
            "Jitter of a digitiser is taken as 2 [1–5] ns peak to peak where it is not stated.");
    public static final Rule CONVERTER_DELAY = assumed(
            "assumed.converter-delay",
            Stage.CONVERTER,
            "A converter that does not state a delay is taken to have none beyond the lines or fields that it must"
                    + " hold; line repetition is taken to start its first copy within one line, motion-adaptive"
                    + " deinterlacing to add 1 [0–2] field.");
    public static final Rule SETTINGS_TO_TUNE = assumed(
            "assumed.settings-to-tune",
            Stage.CONVERTER,
            "Four settings to tune are counted for a converter that does not state them.");
    public static final Rule DISPLAY = assumed(
            "assumed.display", Stage.DISPLAY_INPUT, "What an EDID or a short description leaves open is assumed.");
    public static final Rule DISPLAY_LAG = assumed(
            "assumed.display-lag",
            Stage.DISPLAY_INPUT,
            "The delay of a display is taken from its class where none is stated, in ms at the top row: tube 0; monitor"
                    + " 3 [1–10]; television 8 [3–25] with a low-delay preset, otherwise 60 [30–120]; projector 30"
                    + " [16–60]; 25 [16–60] more for SD or interlaced input.");
    public static final Rule LAG_BOUND = assumed(
            "assumed.lag-below-its-bound",
            Stage.DISPLAY_INPUT,
            "A delay read from press to light holds the console's own delay too: it bounds the display's from above, and the"
                    + " delay of its class is taken below that.");
    public static final Rule OVERSCAN = assumed(
            "assumed.overscan",
            Stage.DISPLAY_INPUT,
            "Where overscan is not stated, televisions and projectors hide 3 % of an HD and 3.5 % of an SD raster at"
                    + " each edge, tubes 5 %, monitors nothing.");
    public static final Rule RESYNC = assumed(
            "assumed.resync",
            Stage.DISPLAY_INPUT,
            "Where it is not stated, a converter needs 0.5 [0.05–2] s to follow a new raster, a digital display 2 [1–5]"
                    + " s, an analog one 0.5 s, a tube 0.3 s.");

    public static final Rule NOT_DOT_LOCKED = new Rule(
            "sampling.not-dot-locked",
            Stage.CONVERTER,
            Severity.WARNING,
            "Without a whole number of samples per dot the dots differ in width.",
            "arithmetic");
    public static final Rule UNDER_SAMPLED = new Rule(
            "sampling.dots-lost",
            Stage.CONVERTER,
            Severity.WARNING,
            "Fewer samples than dots lose dots and fold fine detail to a lower frequency.",
            "sampling theorem");
    public static final Rule HALF_HEIGHT = new Rule(
            "half-height.taken-as-interlaced",
            Stage.CONVERTER,
            Severity.WARNING,
            "A half-height progressive raster taken as interlaced is delayed and combs or bobs by half a line; objects"
                    + " drawn in alternate fields vanish or stand still.",
            "common practice");
    public static final Rule HALF_LINE_JITTER = new Rule(
            "deinterlace.half-line-jitter",
            Stage.CONVERTER,
            Severity.WARNING,
            "An odd number of copies of interlaced lines makes the line totals of successive frames alternate, which"
                    + " some displays refuse.",
            "arithmetic: 262.5 · 3 = 787.5");
    public static final Rule FIELD_FLICKER = new Rule(
            "deinterlace.flicker",
            Stage.CONVERTER,
            Severity.NOTE,
            "Fields shown one after the other flicker at the frame rate on fine horizontal edges.",
            "common practice");
    public static final Rule DROPS = new Rule(
            "motion.fields-dropped-or-repeated",
            Stage.CONVERTER,
            Severity.WARNING,
            "An output that runs at another rate than its source drops or repeats a field every 1/|f_in − f_out|.",
            "arithmetic");
    public static final Rule TEARS = new Rule(
            "motion.picture-tears",
            Stage.CONVERTER,
            Severity.WARNING,
            "With a single field store the picture tears along a line that drifts.",
            "common practice");
    public static final Rule UNLISTED = new Rule(
            "acceptance.raster-not-listed",
            Stage.DISPLAY_INPUT,
            Severity.WARNING,
            "A display promises only what it lists; other rasters may stay blank.",
            "E-EDID A2 table 3.14 note 5; common practice");
    public static final Rule DVI = new Rule(
            "link.dvi-signals-nothing",
            Stage.CONVERTER,
            Severity.NOTE,
            "A DVI link carries no sound and signals neither picture aspect nor RGB range.",
            "HDMI 1.3a appendix C");
    public static final Rule INTENT_LIMIT = new Rule(
            "intent.limit-not-kept",
            Stage.SETUP,
            Severity.WARNING,
            "Limits of the intent that would leave nothing are told instead of kept.",
            "assumption");

    static final List<Rule> ALL = List.of(
            SOURCE_BANDWIDTH,
            USED_AREA,
            COLOUR_ENCODING,
            COLOUR_DECODER,
            CABLE_BANDWIDTH,
            PLAIN_LEAD,
            DIGITISER_JITTER,
            CONVERTER_DELAY,
            SETTINGS_TO_TUNE,
            DISPLAY,
            DISPLAY_LAG,
            LAG_BOUND,
            OVERSCAN,
            RESYNC,
            NOT_DOT_LOCKED,
            UNDER_SAMPLED,
            HALF_HEIGHT,
            HALF_LINE_JITTER,
            FIELD_FLICKER,
            DROPS,
            TEARS,
            UNLISTED,
            DVI,
            INTENT_LIMIT);

    private FindingRules() {}

    private static Rule assumed(String id, Stage stage, String statement) {
        return new Rule(id, stage, Severity.NOTE, statement, "assumption");
    }
}
