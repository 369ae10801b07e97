package rasterfit.app.gear;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.ColourEncoding;
import rasterfit.gear.Level;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Source;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.Variant;
import rasterfit.gear.Window;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** Reads consoles. */
final class SourceReader {
    private static final int MOST_VARIANTS = 32;
    private static final int MOST_OUTPUTS = 32;
    private static final int MOST_MODES = 64;

    private SourceReader() {}

    static @Nullable Source read(Place at, SourceBody body, @Nullable String defaultId) {
        String id = at.id(body.id(), defaultId);
        String name = at.member("name").text(body.name());
        List<Variant> variants = at.member("variants").each(body.variants(), 1, MOST_VARIANTS, SourceReader::variant);
        at.member("variants").distinct(variants, Variant::id);
        return at.make(() -> new Source(id, name, variants));
    }

    static @Nullable Source readOneVariant(
            Place at, @Nullable String writtenId, String writtenName, SourceBody.VariantBody body) {
        String id = at.id(writtenId, "source");
        String name = at.member("name").text(writtenName);
        Variant variant = variant(at, body, "variant-1");
        return variant == null ? null : at.make(() -> new Source(id, name, List.of(variant)));
    }

    private static @Nullable Variant variant(Place at, SourceBody.VariantBody body) {
        return variant(at, body, at.id(body.id(), "variant-" + at.number()));
    }

    private static @Nullable Variant variant(Place at, SourceBody.VariantBody body, String id) {
        at.member("name").optionalText(body.name());
        String region = at.member("region").optionalText(body.region());
        String revision = at.member("hardwareRevision").optionalText(body.hardwareRevision());
        var price = SharedReader.price(at.member("price"), body.price());
        List<SourceOutput> outputs = at.member("outputs").each(body.outputs(), 1, MOST_OUTPUTS, SourceReader::output);
        at.member("outputs").distinct(outputs, SourceOutput::id);
        List<Mode> modes = at.member("modes").each(body.modes(), 1, MOST_MODES, SourceReader::mode);
        at.member("modes").distinct(modes, Mode::name);
        SharedReader.supply(at.member("supply"), body.supply());
        Provenance.read(at.member("provenance"), body.provenance());
        return at.make(() -> new Variant(id, region, revision, price, outputs, modes));
    }

    private static @Nullable SourceOutput output(Place at, SourceBody.SourceOutputBody body) {
        String id = at.id(body.id(), "output-" + at.number());
        if (body.port() != null) {
            at.member("port").slug(body.port());
        }
        var plug = SharedReader.plug(at, body.connector(), body.wiring());
        ColourEncoding encoding = SharedReader.encoding(at.member("encoding"), body.encoding());
        Level level = body.level() == null ? Level.VIDEO_75_OHM : body.level();
        var bandwidth = SharedReader.fact(at.member("bandwidthHz"), body.bandwidthHz(), Range.BANDWIDTH);
        SharedReader.fact(at.member("seriesCapacitorsUf"), body.seriesCapacitorsUf(), Range.CAPACITANCE_UF);
        at.member("sound").optionalToken(body.sound());
        return at.make(() -> new SourceOutput(id, plug, body.format(), body.sync(), encoding, level, bandwidth));
    }

    private static @Nullable Mode mode(Place at, SourceBody.ModeBody body) {
        String name = at.member("name").text(body.name());
        Frequency dotClock = at.member("dotClockHz").frequency(body.dotClockHz(), Range.CLOCK);
        Rational dotsPerLine = at.member("dotsPerLine").exact(body.dotsPerLine(), Range.DOTS);
        Rational linesPerField = at.member("linesPerField").exact(body.linesPerField(), Range.LINES);
        if (at.isSound()) {
            checkStandard(at.member("lineStandard"), body.lineStandard(), linesPerField);
        }
        Rational share =
                body.share() == null ? Rational.ONE : at.member("share").number(body.share(), Range.SHARE);
        Window active = active(at.member("active"), body.active());
        if (at.isSound()) {
            checkInside(at.member("active"), active, dotsPerLine, linesPerField);
            checkFieldRate(
                    at.member("dotClockHz"), dotClock.dividedBy(dotsPerLine).dividedBy(linesPerField));
        }
        Window used = at.isSound() ? used(at.member("used"), body.used(), active) : active;
        return at.make(() -> new Mode(
                name,
                body.lineStandard(),
                dotClock,
                dotsPerLine,
                linesPerField,
                body.scan(),
                share,
                Boolean.TRUE.equals(body.duringPlay()),
                active,
                used,
                isAssumed(body.used()),
                body.shape() == null ? PictureShape.TUBE_4_3 : body.shape()));
    }

    /**
     * Whether a field of so many lines can derive from a standard: about half of its frame's lines, or about all of them
     * (5 % either way, assumption; known consoles stay within 2 %).
     */
    private static void checkStandard(Place at, LineStandard standard, Rational linesPerField) {
        int frame = standard == LineStandard.L525_60 ? 525 : 625;
        Rational share = linesPerField.dividedBy(frame);
        boolean isNear = isWithin5Percent(share, Rational.HALF) || isWithin5Percent(share, Rational.ONE);
        if (standard != LineStandard.OTHER && !isNear) {
            at.invalid("A field of " + linesPerField + " lines does not derive from " + standard
                    + "; say OTHER where no standard fits.");
        }
    }

    private static boolean isWithin5Percent(Rational value, Rational nominal) {
        return !value.dividedBy(nominal).minus(Rational.ONE).abs().isGreaterThan(Rational.of(5, 100));
    }

    private static Window active(Place at, SourceBody.ActiveBody body) {
        return new Window(
                at.member("dots").count(body.dots(), Range.DOTS),
                at.member("lines").count(body.lines(), Range.LINES),
                at.member("firstDot").count(body.firstDot(), Range.FIRST_DOT),
                at.member("firstLine").count(body.firstLine(), Range.FIRST_LINE));
    }

    private static void checkInside(Place at, Window active, Rational dotsPerLine, Rational linesPerField) {
        if (Rational.of(active.firstDot() + active.dots()).isGreaterThan(dotsPerLine)) {
            at.member("dots")
                    .outOfRange(
                            "The active dots end at " + (active.firstDot() + active.dots()) + ", after the line of "
                                    + dotsPerLine + " dots.",
                            dotsPerLine.toString());
        }
        if (Rational.of(active.firstLine() + active.lines()).isGreaterThan(linesPerField)) {
            at.member("lines")
                    .outOfRange(
                            "The active lines end at " + (active.firstLine() + active.lines()) + ", after the field of "
                                    + linesPerField + " lines.",
                            linesPerField.toString());
        }
    }

    private static void checkFieldRate(Place at, Frequency fieldRate) {
        if (!Range.FIELD_RATE.contains(fieldRate.hz())) {
            at.outOfRange(
                    "The field rate that follows, "
                            + fieldRate.hz().toSixDigits().toPlainString() + " Hz, must lie " + Range.FIELD_RATE.words()
                            + ".",
                    Range.FIELD_RATE.limit());
        }
    }

    private static boolean isAssumed(SourceBody.@Nullable UsedBody used) {
        return used == null
                || (used.dots() == null && used.lines() == null)
                || (used.dots() != null && used.firstDot() == null)
                || (used.lines() != null && used.firstLine() == null);
    }

    /** An absent size is that of the active area; an absent position is centred, rounded towards the start. */
    private static Window used(Place at, SourceBody.@Nullable UsedBody body, Window active) {
        if (body == null) {
            return active;
        }
        Integer dots = at.member("dots").optionalCount(body.dots(), Range.DOTS);
        Integer lines = at.member("lines").optionalCount(body.lines(), Range.LINES);
        int[] across = side(at, "dots", "firstDot", dots, body.firstDot(), active.firstDot(), active.dots());
        int[] down = side(at, "lines", "firstLine", lines, body.firstLine(), active.firstLine(), active.lines());
        return at.isSound() ? new Window(across[1], down[1], across[0], down[0]) : active;
    }

    /** First and size of the used area in one direction. */
    private static int[] side(
            Place at,
            String sizeName,
            String firstName,
            @Nullable Integer size,
            @Nullable BigDecimal writtenFirst,
            int activeFirst,
            int activeSize) {
        int usedSize = size == null ? activeSize : size;
        if (usedSize > activeSize) {
            at.member(sizeName)
                    .outOfRange("The used area is at most as large as the active one.", Integer.toString(activeSize));
            return new int[] {activeFirst, activeSize};
        }
        if (writtenFirst == null) {
            return new int[] {activeFirst + (activeSize - usedSize) / 2, usedSize};
        }
        Range inside = Range.of(
                Integer.toString(activeFirst), Integer.toString(activeFirst + activeSize - usedSize), sizeName);
        return new int[] {at.member(firstName).count(writtenFirst, inside), usedSize};
    }
}
