package rasterfit.app.gear;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.EdidReader;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Level;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Processing;
import rasterfit.gear.SamplesPerLine;
import rasterfit.quantity.Frequency;

/** Reads converters. */
final class ConverterReader {
    private static final int MOST_INPUTS = 32;
    private static final int MOST_PROCESSING = 16;
    private static final int MOST_OUTPUTS = 32;
    private static final int MOST_SAMPLE_COUNTS = 256;
    private static final int MOST_CUT_OFFS = 32;
    private static final int MOST_COLOURS = 16;

    /** What a single link carries (HDMI 1.3a §8.3, DVI 1.0 §2.2.3 from memory). */
    static final Frequency PLAIN_TMDS_CLOCK = EdidReader.PLAIN_TMDS_CLOCK;

    private ConverterReader() {}

    static @Nullable Converter read(Place at, ConverterBody body, @Nullable String defaultId) {
        String id = at.id(body.id(), defaultId);
        String name = at.member("name").text(body.name());
        at.member("hardwareRevision").optionalText(body.hardwareRevision());
        at.member("firmware").optionalText(body.firmware());
        at.member("availability").optionalToken(body.availability());
        at.member("sound").optionalToken(body.sound());
        SharedReader.supply(at.member("supply"), body.supply());
        Provenance.read(at.member("provenance"), body.provenance());
        var price = SharedReader.price(at.member("price"), body.price());
        List<ConverterInput> inputs = at.member("inputs").each(body.inputs(), 1, MOST_INPUTS, ConverterReader::input);
        at.member("inputs").distinct(inputs, ConverterInput::id);
        List<Processing> processing =
                at.member("processing").each(body.processing(), 1, MOST_PROCESSING, ProcessingReader::read);
        at.member("processing").distinct(processing, Processing::id);
        List<ConverterOutput> outputs =
                at.member("outputs").each(body.outputs(), 1, MOST_OUTPUTS, ConverterReader::output);
        at.member("outputs").distinct(outputs, ConverterOutput::id);
        requireDigitisers(at.member("inputs"), body, processing);
        var resync = SharedReader.fact(at.member("resyncMs"), body.resyncMs(), Range.MILLISECONDS);
        var settings = SharedReader.fact(at.member("settingsToTune"), body.settingsToTune(), Range.SETTINGS);
        return at.make(() -> new Converter(id, name, price, inputs, processing, outputs, resync, settings));
    }

    /** Lines can only be repeated or scaled as samples. */
    private static void requireDigitisers(Place inputs, ConverterBody body, List<Processing> processing) {
        boolean samples = processing.stream().anyMatch(way -> !(way instanceof Processing.FormatOnly));
        for (int i = 0; samples && i < body.inputs().size(); i++) {
            ConverterBody.ConverterInputBody input = body.inputs().get(i);
            boolean isAnalog =
                    input.accepts().stream().anyMatch(taken -> !taken.format().isDigital());
            if (isAnalog && input.digitiser() == null) {
                inputs.element(i)
                        .member("digitiser")
                        .missing("An analog input whose lines are repeated or scaled needs a digitiser.");
            }
        }
    }

    private static @Nullable ConverterInput input(Place at, ConverterBody.ConverterInputBody body) {
        String id = at.id(body.id(), "input-" + at.number());
        var plug = SharedReader.plug(at, body.connector(), body.wiring());
        var accepts = SharedReader.carried(at.member("accepts"), body.accepts());
        var lineRate = SharedReader.range(at.member("lineRateHz"), body.lineRateHz(), Range.LINE_RATE);
        var fieldRate = SharedReader.range(at.member("fieldRateHz"), body.fieldRateHz(), Range.FIELD_RATE);
        var scans = SharedReader.scans(at.member("scans"), body.scans());
        SharedReader.tokens(at.member("tolerates"), body.tolerates());
        at.member("sound").optionalToken(body.sound());
        var addedFields =
                SharedReader.fact(at.member("halfHeightAddedFields"), body.halfHeightAddedFields(), Range.FIELDS);
        var resolution =
                SharedReader.lineRateResolution(at.member("lineRateResolutionPpm"), body.lineRateResolutionPpm());
        Digitiser digitiser = body.digitiser() == null ? null : digitiser(at.member("digitiser"), body.digitiser());
        return at.make(() -> new ConverterInput(
                id,
                plug,
                body.level() == null ? Level.VIDEO_75_OHM : body.level(),
                accepts,
                lineRate,
                fieldRate,
                scans,
                body.halfHeightProgressive() == null ? Assumptions.HALF_HEIGHT : body.halfHeightProgressive(),
                addedFields,
                resolution,
                digitiser));
    }

    private static @Nullable Digitiser digitiser(Place at, ConverterBody.DigitiserBody body) {
        Frequency greatest = at.member("maxSampleRateHz").frequency(body.maxSampleRateHz(), Range.CLOCK);
        SamplesPerLine samples = sampleCounts(at.member("samplesPerLine"), body.samplesPerLine());
        Integer steps = at.member("phaseSteps").optionalCount(body.phaseSteps(), Range.PHASE_STEPS);
        List<Frequency> lowPass = at.member("lowPassHz")
                .each(
                        body.lowPassHz(),
                        0,
                        MOST_CUT_OFFS,
                        (place, written) -> place.frequency(written, Range.BANDWIDTH));
        var jitter = SharedReader.fact(at.member("clockJitterNs"), body.clockJitterNs(), Range.JITTER_NS);
        return samples == null ? null : at.make(() -> new Digitiser(greatest, samples, steps, lowPass, jitter));
    }

    private static @Nullable SamplesPerLine sampleCounts(Place at, SampleCounts body) {
        if (body.range() != null) {
            return range(at, body.range());
        }
        List<Integer> values =
                at.each(body.values(), 1, MOST_SAMPLE_COUNTS, (place, written) -> place.count(written, Range.SAMPLES));
        return at.make(() -> new SamplesPerLine.FixedList(values));
    }

    static SamplesPerLine.@Nullable FreeRange range(Place at, @Nullable CountRange body) {
        if (body == null) {
            return null;
        }
        int min = at.member("min").count(body.min(), Range.SAMPLES);
        int max = at.member("max").count(body.max(), Range.SAMPLES);
        return at.make(() -> new SamplesPerLine.FreeRange(min, max));
    }

    private static @Nullable ConverterOutput output(Place at, ConverterBody.ConverterOutputBody body) {
        String id = at.id(body.id(), "output-" + at.number());
        var plug = SharedReader.plug(at, body.connector(), body.wiring());
        at.member("sound").optionalToken(body.sound());
        at.member("colours").each(body.colours(), 0, MOST_COLOURS, ConverterReader::colour);
        boolean isAnalog = body.format() != null && !body.format().isDigital();
        if (isAnalog == (body.link() != null)) {
            at.wrongForm("An output has either a link, if it is digital, or an analog format.");
            return null;
        }
        refuseOthers(at, body, isAnalog);
        return isAnalog ? analog(at, id, plug, body) : digital(at, id, plug, body);
    }

    private static @Nullable ConverterOutput digital(
            Place at, String id, rasterfit.gear.Plug plug, ConverterBody.ConverterOutputBody body) {
        Frequency written = at.member("maxTmdsClockHz").optionalFrequency(body.maxTmdsClockHz(), Range.CLOCK);
        LinkKind link = java.util.Objects.requireNonNull(body.link());
        return at.make(() -> new ConverterOutput.Digital(
                id, plug, link, written == null ? PLAIN_TMDS_CLOCK : written, Boolean.TRUE.equals(body.repetition())));
    }

    private static @Nullable ConverterOutput analog(
            Place at, String id, rasterfit.gear.Plug plug, ConverterBody.ConverterOutputBody body) {
        Frequency greatest = at.member("maxPixelClockHz").optionalFrequency(body.maxPixelClockHz(), Range.CLOCK);
        var format = java.util.Objects.requireNonNull(body.format());
        Level level = body.level() == null ? Level.VIDEO_75_OHM : body.level();
        return at.make(() -> new ConverterOutput.Analog(id, plug, format, body.sync(), level, greatest));
    }

    /** Members of the other kind of output. */
    private static void refuseOthers(Place at, ConverterBody.ConverterOutputBody body, boolean isAnalog) {
        List<String> others = new ArrayList<>();
        if (isAnalog) {
            addIfPresent(others, "maxTmdsClockHz", body.maxTmdsClockHz());
            addIfPresent(others, "repetition", body.repetition());
            addIfPresent(others, "colours", body.colours());
            addIfPresent(others, "deepColour", body.deepColour());
        } else {
            addIfPresent(others, "sync", body.sync());
            addIfPresent(others, "level", body.level());
            addIfPresent(others, "maxPixelClockHz", body.maxPixelClockHz());
        }
        for (String name : others) {
            at.member(name).invalid("Only " + (isAnalog ? "a digital" : "an analog") + " output has this member.");
        }
    }

    private static void addIfPresent(List<String> names, String name, @Nullable Object value) {
        if (value != null) {
            names.add(name);
        }
    }

    private static ConverterBody.ColourBody colour(Place at, ConverterBody.ColourBody body) {
        at.member("format").optionalToken(body.format());
        return body;
    }
}
