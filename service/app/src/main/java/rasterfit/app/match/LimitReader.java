package rasterfit.app.match;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.Range;
import rasterfit.app.match.MatchRequestBody.LimitBody;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.LatencyFigure;
import rasterfit.match.Limit;
import rasterfit.match.LimitedMeasure;
import rasterfit.quantity.Rational;

/** Reads one limit of a request. */
final class LimitReader {
    private static final Range VALUE = Range.of("-1000000000", "1000000000", "");
    private static final Set<LimitedMeasure> EXACT =
            EnumSet.of(LimitedMeasure.VERTICAL_SCALE, LimitedMeasure.HORIZONTAL_SCALE, LimitedMeasure.SAMPLES_PER_DOT);
    private static final Pattern AMOUNT = Pattern.compile("[0-9]{1,10}(\\.[0-9]{1,4})?");
    private static final Pattern CURRENCY = Pattern.compile("[A-Z]{3}");

    private LimitReader() {}

    static @Nullable Limit read(Place at, LimitBody body) {
        int dot = body.measure().indexOf('.');
        String name = dot < 0 ? body.measure() : body.measure().substring(0, dot);
        LimitedMeasure measure = LimitedMeasure.byId(name).orElse(null);
        if (measure == null) {
            at.member("measure").unknownValue("Unknown measure; known here: " + known() + ".");
            return null;
        }
        LatencyFigure figure = dot < 0
                ? null
                : figure(at.member("measure"), measure, body.measure().substring(dot + 1));
        if ((body.atMost() == null) == (body.atLeast() == null)) {
            at.wrongForm("A limit has exactly one of atMost and atLeast.");
            return null;
        }
        boolean isUpper = body.atMost() != null;
        LimitValue written = isUpper ? body.atMost() : body.atLeast();
        Rational value = value(at.member(isUpper ? "atMost" : "atLeast"), measure, written);
        checkCurrency(at.member("currency"), measure, body.currency());
        Limit.Bound bound = isUpper ? Limit.Bound.AT_MOST : Limit.Bound.AT_LEAST;
        return at.make(() -> new Limit(measure, figure, bound, value, body.currency()));
    }

    private static @Nullable LatencyFigure figure(Place at, LimitedMeasure measure, String name) {
        for (LatencyFigure figure : LatencyFigure.values()) {
            if (measure.isLatency() && written(figure).equals(name)) {
                return figure;
            }
        }
        at.unknownValue(
                measure.isLatency()
                        ? "Unknown figure; a latency has "
                                + Arrays.stream(LatencyFigure.values())
                                        .map(LimitReader::written)
                                        .collect(Collectors.joining(", "))
                                + "."
                        : "Only a latency has figures.");
        return null;
    }

    private static String written(LatencyFigure figure) {
        return figure.name().toLowerCase(Locale.ROOT);
    }

    private static Rational value(Place at, LimitedMeasure measure, @Nullable LimitValue written) {
        String text = written == null ? null : written.text();
        BigDecimal number = written == null ? null : written.number();
        if (measure == LimitedMeasure.ACCEPTANCE) {
            return grade(at, text);
        }
        if (measure == LimitedMeasure.PRICE) {
            if (text == null || !AMOUNT.matcher(text).matches()) {
                at.wrongForm("An amount is a string with up to 10 digits and 4 decimals.");
                return Rational.ZERO;
            }
            return Rational.of(new BigDecimal(text));
        }
        if (EXACT.contains(measure)) {
            if (text == null) {
                at.wrongForm("An exact quantity is a string, such as \"4\" or \"9/2\".");
                return Rational.ZERO;
            }
            return at.exact(text, VALUE);
        }
        if (number == null) {
            at.wrongForm("Expected a number.");
            return Rational.ZERO;
        }
        return at.number(number, VALUE);
    }

    private static Rational grade(Place at, @Nullable String text) {
        for (AcceptanceGrade grade : AcceptanceGrade.values()) {
            if (grade.name().equals(text)) {
                return grade.rankFromWorst();
            }
        }
        at.unknownValue("Expected one of the grades "
                + Arrays.stream(AcceptanceGrade.values()).map(Enum::name).collect(Collectors.joining(", ")) + ".");
        return Rational.ZERO;
    }

    private static void checkCurrency(Place at, LimitedMeasure measure, @Nullable String currency) {
        if (measure != LimitedMeasure.PRICE) {
            if (currency != null) {
                at.invalid("Only a price has a currency.");
            }
        } else if (currency == null) {
            at.missing("A price needs a currency.");
        } else if (!CURRENCY.matcher(currency).matches()) {
            at.wrongForm("A currency is a code of three capital letters (ISO 4217).");
        }
    }

    private static String known() {
        return Arrays.stream(LimitedMeasure.values()).map(LimitedMeasure::id).collect(Collectors.joining(", "));
    }
}
