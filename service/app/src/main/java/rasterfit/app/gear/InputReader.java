package rasterfit.app.gear;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.DisplayBody.DisplayInputBody;
import rasterfit.app.gear.DisplayBody.StateBody;
import rasterfit.app.gear.StateLayers.Written;
import rasterfit.edid.EdidReading;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Basis;
import rasterfit.gear.Carried;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading;
import rasterfit.gear.Level;
import rasterfit.gear.Plug;
import rasterfit.gear.SinkLimits;
import rasterfit.gear.SinkLimitsReader;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Reads one input of a display in one of its menu states: each member from the state, or else from the input. */
final class InputReader {
    private static final int MOST_CONTROLS = AspectControl.values().length;
    private static final int MOST_READINGS = 256;

    private final StateLayers layers;
    private final DisplayReader display;

    InputReader(StateLayers layers, DisplayReader display) {
        this.layers = layers;
        this.display = display;
    }

    @Nullable
    DisplayInput read(String id, @Nullable String stateId) {
        DisplayInputBody input = layers.input();
        Place at = layers.inputPlace();
        checkKept(at, input);
        Plug plug = input.connector() == null ? null : SharedReader.plug(at, input.connector(), input.wiring());
        EdidReading edid = edid();
        SinkReader sinkReader = new SinkReader(layers);
        List<Carried> accepts = accepts(edid, sinkReader.hasTypedIn(), plug);
        boolean isDigital = accepts.stream().anyMatch(taken -> taken.format().isDigital());
        FrequencyRange lineRate =
                range("lineRateHz", DisplayInputBody::lineRateHz, StateBody::lineRateHz, Range.LINE_RATE);
        FrequencyRange fieldRate =
                range("fieldRateHz", DisplayInputBody::fieldRateHz, StateBody::fieldRateHz, Range.FIELD_RATE);
        SinkLimits sink =
                sink(sinkReader, edid, isDigital, () -> sinkReader.typedIn(id, lineRate, fieldRate, plug, display));
        List<AspectControl> controls = controls(id);
        Fact overscan = fact(
                "overscanPercent",
                DisplayInputBody::overscanPercent,
                StateBody::overscanPercent,
                Range.OVERSCAN_PERCENT);
        Fact resync = fact("resyncMs", DisplayInputBody::resyncMs, StateBody::resyncMs, Range.MILLISECONDS);
        List<LagReading> lag = lag();
        Set<Scan> scans = scans();
        Rational resolution =
                SharedReader.lineRateResolution(at.member("lineRateResolutionPpm"), input.lineRateResolutionPpm());
        HalfHeight halfHeight = halfHeight(id, isDigital);
        Level level = input.level() == null ? Level.VIDEO_75_OHM : input.level();
        return at.make(() -> new DisplayInput(
                id,
                stateId,
                plug,
                level,
                accepts,
                isDigital ? null : orFromEdid(lineRate, edid, SinkLimitsReader::analogLineRate),
                isDigital ? null : orFromEdid(fieldRate, edid, SinkLimitsReader::analogFieldRate),
                scans,
                halfHeight,
                resolution,
                sink,
                controls,
                overscan,
                resync,
                lag,
                lowDelay()));
    }

    private void checkKept(Place at, DisplayInputBody input) {
        at.member("sound").optionalToken(input.sound());
        SharedReader.tokens(at.member("tolerates"), input.tolerates());
        if (layers.state() != null && layers.statePlace() != null) {
            layers.statePlace().member("sound").optionalToken(layers.state().sound());
            SharedReader.tokens(
                    layers.statePlace().member("tolerates"), layers.state().tolerates());
        }
    }

    private @Nullable EdidReading edid() {
        Written<String> base64 = layers.written("edidBase64", DisplayInputBody::edidBase64, StateBody::edidBase64);
        EdidReading edid = base64.value() == null ? null : EdidText.read(base64.at(), base64.value());
        if (edid != null) {
            display.use(edid);
        }
        return edid;
    }

    /** The limits of a digital input, or of an analog one with an EDID. */
    private static @Nullable SinkLimits sink(
            SinkReader reader, @Nullable EdidReading edid, boolean isDigital, Supplier<SinkLimits> typedIn) {
        if (edid != null) {
            return reader.fromEdid(edid);
        }
        if (isDigital) {
            return typedIn.get();
        }
        reader.refuseTypedIn("Only a digital input has this member.");
        return null;
    }

    /** What the input takes, or else what its EDID or its kind of connector says. */
    private List<Carried> accepts(@Nullable EdidReading edid, boolean hasTypedInLimits, @Nullable Plug plug) {
        Written<List<CarriedBody>> accepts = layers.written("accepts", DisplayInputBody::accepts, StateBody::accepts);
        if (accepts.value() != null) {
            return SharedReader.carried(accepts.at(), accepts.value());
        }
        if (edid != null) {
            return SinkLimitsReader.accepts(edid);
        }
        if (hasTypedInLimits || (plug != null && SinkReader.isDigitalOnly(plug.connector()))) {
            return List.of(new Carried(Format.TMDS, Set.of()));
        }
        if (layers.inputPlace().isSound()) {
            accepts.at().missing("An analog input has to say which formats it takes.");
        }
        return List.of();
    }

    private @Nullable FrequencyRange range(
            String name,
            Function<DisplayInputBody, @Nullable RangeBody> ofInput,
            Function<StateBody, @Nullable RangeBody> ofState,
            Range sensible) {
        Written<RangeBody> range = layers.written(name, ofInput, ofState);
        return SharedReader.range(range.at(), range.value(), sensible);
    }

    private static @Nullable FrequencyRange orFromEdid(
            @Nullable FrequencyRange written,
            @Nullable EdidReading edid,
            Function<EdidReading, @Nullable FrequencyRange> limits) {
        return written != null || edid == null ? written : limits.apply(edid);
    }

    private Set<Scan> scans() {
        Written<Set<Scan>> scans = layers.written("scans", DisplayInputBody::scans, StateBody::scans);
        return SharedReader.scans(scans.at(), scans.value());
    }

    private HalfHeight halfHeight(String id, boolean isDigital) {
        HalfHeight written = layers.written(
                        "halfHeightProgressive",
                        DisplayInputBody::halfHeightProgressive,
                        StateBody::halfHeightProgressive)
                .value();
        if (written == null && !isDigital) {
            display.assume("Input " + id + ": what it makes of half-height progressive rasters is not stated; it is"
                    + " assumed to show them as they are.");
        }
        return written == null ? Assumptions.HALF_HEIGHT : written;
    }

    private List<AspectControl> controls(String id) {
        Written<List<AspectControl>> controls =
                layers.written("aspectControls", DisplayInputBody::aspectControls, StateBody::aspectControls);
        if (controls.value() == null) {
            display.assume("Input " + id + ": its aspect controls are not stated; "
                    + (display.isTube() ? "a picture over the whole tube is" : "fill, signalled and one-to-one are")
                    + " assumed.");
            return Assumptions.aspectControls(display.isTube());
        }
        List<AspectControl> read = controls.at().each(controls.value(), 1, MOST_CONTROLS, (at, control) -> control);
        controls.at().distinct(read, Enum::name);
        return read;
    }

    private Fact fact(
            String name,
            Function<DisplayInputBody, @Nullable NumberFact> ofInput,
            Function<StateBody, @Nullable NumberFact> ofState,
            Range range) {
        Written<NumberFact> fact = layers.written(name, ofInput, ofState);
        return SharedReader.fact(fact.at(), fact.value(), range);
    }

    private List<LagReading> lag() {
        StateBody state = layers.state();
        Place statePlace = layers.statePlace();
        List<String> path = new ArrayList<>(
                List.of("inputs", step(layers.inputPlace(), layers.input().id())));
        if (state != null && statePlace != null && state.lag() != null) {
            path.addAll(List.of("states", step(statePlace, state.id())));
        }
        Written<List<DisplayBody.LagBody>> lag = layers.written("lag", DisplayInputBody::lag, StateBody::lag);
        return lag.at().each(lag.value(), 0, MOST_READINGS, (at, body) -> {
            List<String> ms = Provenance.path(path, "lag", Integer.toString(at.number() - 1), "ms");
            return reading(at, body, display.provenance().of(ms, Basis.DECLARED));
        });
    }

    /** An element in a path of the provenance. */
    private static String step(Place at, @Nullable String id) {
        return id == null ? Integer.toString(at.number() - 1) : id;
    }

    private static @Nullable LagReading reading(Place at, DisplayBody.LagBody body, Basis basis) {
        NamedTiming timing = body.timing() == null ? null : TimingReferences.read(at.member("timing"), body.timing());
        Fact ms = SharedReader.fact(at.member("ms"), body.ms(), Range.MILLISECONDS);
        Integer row = at.member("referenceRow").optionalCount(body.referenceRow(), Range.FIRST_LINE);
        LagReading.Method method = body.method() == null ? LagReading.Method.NOT_STATED : body.method();
        String label = timing == null ? null : timing.label();
        return at.make(() -> new LagReading(label, interval(ms), method, row, basis));
    }

    private static Fact.Within interval(Fact fact) {
        if (fact instanceof Fact.Known known) {
            return new Fact.Within(known.value(), known.value(), known.value());
        }
        return (Fact.Within) fact;
    }

    private @Nullable Boolean lowDelay() {
        DisplayBody.Preset preset = layers.written("preset", DisplayInputBody::preset, StateBody::preset)
                .value();
        return preset == null ? null : preset == DisplayBody.Preset.LOW_DELAY;
    }
}
