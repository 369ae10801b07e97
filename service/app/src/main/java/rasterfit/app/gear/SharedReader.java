package rasterfit.app.gear;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Carried;
import rasterfit.gear.ColourEncoding;
import rasterfit.gear.Connector;
import rasterfit.gear.Fact;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.Plug;
import rasterfit.gear.PriceRange;
import rasterfit.gear.SyncKind;
import rasterfit.quantity.Money;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Reads the parts that several kinds of gear share. */
final class SharedReader {
    private static final Pattern AMOUNT = Pattern.compile("[0-9]{1,10}(\\.[0-9]{1,4})?");

    private static final int MOST_FORMATS = 16;
    private static final int MOST_TOKENS = 32;

    private SharedReader() {}

    static Fact fact(Place at, @Nullable NumberFact written, Range range) {
        if (written == null) {
            return Fact.unknown();
        }
        if (written.value() != null) {
            return Fact.known(at.number(written.value(), range));
        }
        NumberFact.NumberBounds bounds = Objects.requireNonNull(written.bounds());
        Rational least = at.member("least").number(bounds.least(), range);
        Rational greatest = at.member("greatest").number(bounds.greatest(), range);
        Rational typical =
                bounds.typical() == null ? null : at.member("typical").number(bounds.typical(), range);
        return within(at, least, typical, greatest);
    }

    static Fact fact(Place at, @Nullable ExactFact written, Range range) {
        if (written == null) {
            return Fact.unknown();
        }
        if (written.value() != null) {
            return Fact.known(at.exact(written.value(), range));
        }
        ExactFact.ExactBounds bounds = Objects.requireNonNull(written.bounds());
        Rational least = at.member("least").exact(bounds.least(), range);
        Rational greatest = at.member("greatest").exact(bounds.greatest(), range);
        Rational typical =
                bounds.typical() == null ? null : at.member("typical").exact(bounds.typical(), range);
        return within(at, least, typical, greatest);
    }

    private static Fact within(Place at, Rational least, @Nullable Rational typical, Rational greatest) {
        Fact within = at.make(() -> new Fact.Within(least, typical, greatest));
        return within == null ? Fact.unknown() : within;
    }

    static @Nullable FrequencyRange range(Place at, @Nullable RangeBody body, Range sensible) {
        if (body == null) {
            return null;
        }
        var min = at.member("min").frequency(body.min(), sensible);
        var max = at.member("max").frequency(body.max(), sensible);
        return at.make(() -> new FrequencyRange(min, max));
    }

    /** Where a connector is not known, some other stands in and the fault is noted. */
    static Plug plug(Place at, String connector, @Nullable String wiring) {
        at.member("wiring").optionalToken(wiring);
        if (!Connector.isKnown(connector)) {
            at.member("connector")
                    .unknownValue("Unknown connector; known are " + String.join(", ", Connector.LISTED)
                            + ", or own:<slug> for one that only one maker's gear has.");
            return new Plug(new Connector(Connector.LISTED.get(0)), wiring);
        }
        return new Plug(new Connector(connector), wiring);
    }

    static List<Carried> carried(Place at, List<CarriedBody> bodies) {
        return carried(at, bodies, 1);
    }

    static List<Carried> carried(Place at, List<CarriedBody> bodies, int least) {
        return at.each(bodies, least, MOST_FORMATS, SharedReader::carried);
    }

    private static Carried carried(Place at, CarriedBody body) {
        List<ColourEncoding> encodings =
                at.member("encodings").each(body.encodings(), 0, MOST_TOKENS, SharedReader::encoding);
        fact(at.member("seriesCapacitorsUf"), body.seriesCapacitorsUf(), Range.CAPACITANCE_UF);
        Set<SyncKind> syncs = body.syncs() == null ? Set.of() : body.syncs();
        return new Carried(body.format(), syncs, Set.copyOf(encodings), body.separation());
    }

    static @Nullable ColourEncoding encoding(Place at, @Nullable String written) {
        if (written == null) {
            return null;
        }
        if (!ColourEncoding.isKnown(written)) {
            at.wrongForm("A colour encoding is named by line count and subcarrier, such as C625_443.");
            return null;
        }
        return new ColourEncoding(written);
    }

    static void tokens(Place at, @Nullable List<String> written) {
        tokens(at, written, Place::optionalToken);
    }

    private static void tokens(Place at, @Nullable List<String> written, Place.ElementReader<String, String> reader) {
        at.each(written, 0, MOST_TOKENS, reader);
    }

    static Set<Scan> scans(Place at, @Nullable Set<Scan> written) {
        if (written == null) {
            return Set.of(Scan.values());
        }
        if (written.isEmpty()) {
            at.outOfRange("Name at least one scan, or leave the member out.", "1.." + Scan.values().length);
        }
        return written;
    }

    static Rational lineRateResolution(Place at, @Nullable BigDecimal written) {
        return written == null ? Assumptions.LINE_RATE_RESOLUTION_PPM : at.number(written, Range.RESOLUTION_PPM);
    }

    static @Nullable PriceRange price(Place at, @Nullable PriceBody body) {
        if (body == null) {
            return null;
        }
        boolean isSingle = body.amount() != null && body.least() == null && body.greatest() == null;
        boolean isRange = body.amount() == null && body.least() != null && body.greatest() != null;
        if (!isSingle && !isRange) {
            at.wrongForm("A price has either an amount, or both least and greatest.");
            return null;
        }
        BigDecimal least = amount(at, isSingle ? "amount" : "least", isSingle ? body.amount() : body.least());
        BigDecimal greatest = amount(at, isSingle ? "amount" : "greatest", isSingle ? body.amount() : body.greatest());
        return at.make(() ->
                new PriceRange(new Money(least, body.currency()), new Money(greatest, body.currency()), body.asOf()));
    }

    static BigDecimal amount(Place at, String member, @Nullable String written) {
        if (written == null || !AMOUNT.matcher(written).matches()) {
            at.member(member).wrongForm("An amount is a string with up to 10 digits and 4 decimals.");
            return BigDecimal.ZERO;
        }
        return new BigDecimal(written);
    }

    static void supply(Place at, @Nullable SupplyBody body) {
        if (body == null) {
            return;
        }
        if (body.volts() != null) {
            at.member("volts").exact(body.volts(), Range.VOLTS);
        }
        if (body.milliamps() != null) {
            at.member("milliamps").number(body.milliamps(), Range.MILLIAMPS);
        }
        at.member("plug").optionalToken(body.plug());
    }
}
