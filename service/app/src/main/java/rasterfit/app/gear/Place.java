package rasterfit.app.gear;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemType;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * A place in a request, from which values are read and at which faults are noted. A faulty value reads as some harmless
 * stand-in, so that reading goes on and finds the other faults; {@link #make} builds nothing from stand-ins, and what
 * was read is thrown away with {@link Faults#throwIfAny}.
 */
public final class Place {
    private static final Pattern SLUG = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final Pattern TOKEN = Pattern.compile("[A-Z][A-Z0-9_]{0,39}");
    private static final int LONGEST_TEXT = 200;
    private static final int LONGEST_NOTE = 2000;
    private static final int LONGEST_SLUG = 100;

    /** Digits behind the point of a plain number; enough for any binary fraction that a client writes out. */
    private static final int MOST_DECIMALS = 40;

    /** Reads one element of a list; null if nothing could be built. */
    @FunctionalInterface
    public interface ElementReader<B, T> {
        @Nullable
        T read(Place at, B body);
    }

    private final Faults faults;
    private final String pointer;
    private final int reportsBefore;

    private Place(Faults faults, String pointer) {
        this.faults = faults;
        this.pointer = pointer;
        this.reportsBefore = faults.reports();
    }

    /** The whole body. */
    public static Place root(Faults faults) {
        return new Place(faults, "");
    }

    public Place member(String name) {
        return new Place(faults, pointer + "/" + name.replace("~", "~0").replace("/", "~1"));
    }

    public Place element(int index) {
        return new Place(faults, pointer + "/" + index);
    }

    /** The number, from 1, of this element in its list. */
    int number() {
        return Integer.parseInt(pointer.substring(pointer.lastIndexOf('/') + 1)) + 1;
    }

    /** Notes a value that is not written as it has to be (400). */
    public void wrongForm(String message) {
        faults.add(ProblemType.WRONG_TYPE, ProblemError.at(pointer, message));
    }

    /** Notes a value that is none of those known (400). */
    public void unknownValue(String message) {
        faults.add(ProblemType.UNKNOWN_VALUE, ProblemError.at(pointer, message));
    }

    /** Notes that a required member is absent (400). */
    public void missing(String message) {
        faults.add(ProblemType.MISSING_MEMBER, ProblemError.at(pointer, message));
    }

    /** Notes a member that is not known (400). */
    public void unknownMember(String message) {
        faults.add(ProblemType.UNKNOWN_MEMBER, ProblemError.at(pointer, message));
    }

    /** Notes a value that makes no sense or does not fit the others (422). */
    public void invalid(String message) {
        faults.add(ProblemType.INVALID_VALUE, ProblemError.at(pointer, message));
    }

    /** Notes a value beyond a limit (422). */
    public void outOfRange(String message, String limit) {
        faults.add(ProblemType.INVALID_VALUE, ProblemError.at(pointer, message, limit));
    }

    /** Whether nothing was wrong since this place was entered. */
    public boolean isSound() {
        return faults.reports() == reportsBefore;
    }

    /** Builds a value unless something was wrong since this place was entered; what the value refuses is noted here. */
    public <T> @Nullable T make(Supplier<T> parts) {
        if (!isSound()) {
            return null;
        }
        try {
            return parts.get();
        } catch (IllegalArgumentException refused) {
            invalid(sentence(String.valueOf(refused.getMessage())));
            return null;
        }
    }

    private static String sentence(String message) {
        return Character.toUpperCase(message.charAt(0)) + message.substring(1) + ".";
    }

    /** Reads every element that can be read; an absent list is empty. */
    public <B, T> List<T> each(@Nullable List<? extends B> bodies, int least, int most, ElementReader<B, T> reader) {
        List<T> values = new ArrayList<>();
        if (bodies == null) {
            return values;
        }
        if (bodies.size() < least || bodies.size() > most) {
            outOfRange(
                    "A list of " + bodies.size() + "; from " + least + " to " + most + " elements are allowed.",
                    least + ".." + most);
            return values;
        }
        for (int i = 0; i < bodies.size(); i++) {
            T value = reader.read(element(i), bodies.get(i));
            if (value != null) {
                values.add(value);
            }
        }
        return values;
    }

    /** Notes elements that share a name. */
    public <T> void distinct(List<T> elements, Function<T, String> name) {
        Set<String> names = new HashSet<>();
        for (T element : elements) {
            if (!names.add(name.apply(element))) {
                invalid("Two elements are named " + name.apply(element) + ".");
            }
        }
    }

    /** An exact quantity in its written form. */
    public Rational exact(String written, Range range) {
        Rational value;
        try {
            value = Rational.parse(written);
        } catch (NumberFormatException malformed) {
            wrongForm("An exact quantity is a string with a decimal number or a fraction of integers, with up to 20"
                    + " digits and 12 decimals.");
            return Rational.ONE;
        }
        if (!range.contains(value)) {
            outOfRange("It lies " + range.words() + ".", range.limit());
            return Rational.ONE;
        }
        return value;
    }

    public Frequency frequency(String written, Range range) {
        return new Frequency(exact(written, range));
    }

    public @Nullable Frequency optionalFrequency(@Nullable String written, Range range) {
        return written == null ? null : frequency(written, range);
    }

    /** A plain number. */
    public Rational number(BigDecimal written, Range range) {
        if (!range.contains(written)) {
            outOfRange("It lies " + range.words() + ".", range.limit());
            return Rational.ONE;
        }
        if (written.stripTrailingZeros().scale() > MOST_DECIMALS) {
            wrongForm("A number has at most " + MOST_DECIMALS + " decimals.");
            return Rational.ONE;
        }
        return Rational.of(written);
    }

    /** A whole number; {@code 240.0} is one. */
    public int count(BigDecimal written, Range range) {
        if (!range.contains(written)) {
            outOfRange("It lies " + range.words() + ".", range.limit());
            return 1;
        }
        if (written.stripTrailingZeros().scale() > 0) {
            wrongForm("Expected a whole number.");
            return 1;
        }
        return written.intValueExact();
    }

    public @Nullable Integer optionalCount(@Nullable BigDecimal written, Range range) {
        return written == null ? null : count(written, range);
    }

    /** A name or another line of text for people. */
    public String text(String written) {
        if (written.isBlank() || written.length() > LONGEST_TEXT) {
            outOfRange("A text has from 1 to " + LONGEST_TEXT + " characters.", "1.." + LONGEST_TEXT);
        } else if (written.codePoints().anyMatch(Character::isISOControl)) {
            wrongForm("A text holds no control characters.");
        }
        return written;
    }

    public @Nullable String optionalText(@Nullable String written) {
        return written == null ? null : text(written);
    }

    /** Some lines for people. */
    public @Nullable String optionalNote(@Nullable String written) {
        if (written == null) {
            return null;
        }
        if (written.isBlank() || written.length() > LONGEST_NOTE) {
            outOfRange("A note has from 1 to " + LONGEST_NOTE + " characters.", "1.." + LONGEST_NOTE);
        } else if (written.codePoints().anyMatch(character -> character != '\n' && Character.isISOControl(character))) {
            wrongForm("A note holds no control characters but line feeds.");
        }
        return written;
    }

    /** An id, or the one that stands in for an absent one; absent where one is required, it is missed. */
    String id(@Nullable String written, @Nullable String otherwise) {
        if (written != null) {
            return member("id").slug(written);
        }
        if (otherwise == null) {
            member("id").missing("This member is required.");
            return "";
        }
        return otherwise;
    }

    /** An id: lower-case letters and digits in groups joined by single hyphens. */
    public String slug(String written) {
        if (written.length() > LONGEST_SLUG || !SLUG.matcher(written).matches()) {
            wrongForm("An id is a slug of up to " + LONGEST_SLUG
                    + " characters: lower-case letters and digits in groups joined by single hyphens.");
        }
        return written;
    }

    /** A value of an open list, in capitals. */
    public @Nullable String optionalToken(@Nullable String written) {
        if (written != null && !TOKEN.matcher(written).matches()) {
            wrongForm("Expected capital letters, digits and underscores, at most 40.");
        }
        return written;
    }
}
