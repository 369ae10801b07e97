package rasterfit.scenario;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Carried;
import rasterfit.gear.ColourEncoding;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Separation;
import rasterfit.gear.SyncKind;

/** {@code FORMAT+SYNC|SYNC:ENCODING|ENCODING/SEPARATION@LEVEL}, all but the format left out where it does not matter. */
record SignalText(
        Format format,
        Set<SyncKind> syncs,
        Set<ColourEncoding> encodings,
        @Nullable Separation separation,
        Level level,
        Word word) {

    private static final Pattern PARTS =
            Pattern.compile("([A-Z]+)(?:\\+([A-Z_|]+))?(?::([A-Z0-9_|]+))?(?:/([A-Z]+))?(?:@([A-Z0-9_]+))?");

    static boolean isOne(String text) {
        Matcher parts = PARTS.matcher(text);
        return parts.matches()
                && Arrays.stream(Format.values())
                        .anyMatch(format -> format.name().equals(parts.group(1)));
    }

    static SignalText read(Word word) {
        return read(word, word.text());
    }

    static SignalText read(Word word, String text) {
        Matcher parts = PARTS.matcher(text);
        if (!isOne(text) || !parts.matches()) {
            throw word.fault("a signal is written as FORMAT+SYNC:ENCODING/SEPARATION@LEVEL");
        }
        try {
            return new SignalText(
                    Format.valueOf(parts.group(1)),
                    each(parts.group(2), SyncKind::valueOf),
                    each(parts.group(3), ColourEncoding::new),
                    parts.group(4) == null ? null : Separation.valueOf(parts.group(4)),
                    parts.group(5) == null ? Level.VIDEO_75_OHM : Level.valueOf(parts.group(5)),
                    word);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(word.fault(e.getMessage()).getMessage(), e);
        }
    }

    private static <T> Set<T> each(@Nullable String alternatives, Function<String, T> reader) {
        return alternatives == null
                ? Set.of()
                : Arrays.stream(alternatives.split("\\|", -1))
                        .map(reader)
                        .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    Carried carried() {
        return new Carried(format, syncs, encodings, separation);
    }

    /** Of a signal as it is sent, which has one sync at most. */
    @Nullable
    SyncKind sync() {
        return only(List.copyOf(syncs));
    }

    @Nullable
    ColourEncoding encoding() {
        return only(List.copyOf(encodings));
    }

    private <T> @Nullable T only(List<T> all) {
        if (all.size() > 1) {
            throw word.fault("a signal that is sent has one sync and one encoding at most");
        }
        return all.isEmpty() ? null : all.get(0);
    }
}
