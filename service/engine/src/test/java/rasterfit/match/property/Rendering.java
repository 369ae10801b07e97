package rasterfit.match.property;

import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Records written out in full, member by member, so that two are written alike only if they are alike. */
final class Rendering {
    private Rendering() {}

    /**
     * Lists and maps in the order in which they are walked, which is the order in which an answer would tell them; sets,
     * which have none, sorted.
     */
    static String of(@Nullable Object value) {
        if (value instanceof Record record) {
            StringBuilder text = new StringBuilder(record.getClass().getSimpleName()).append('{');
            for (RecordComponent component : record.getClass().getRecordComponents()) {
                text.append(component.getName())
                        .append('=')
                        .append(of(read(record, component)))
                        .append(';');
            }
            return text.append('}').toString();
        }
        if (value instanceof Map<?, ?> map) {
            return map.entrySet().stream()
                    .map(entry -> of(entry.getKey()) + ":" + of(entry.getValue()))
                    .collect(Collectors.joining(",", "(", ")"));
        }
        if (value instanceof List<?> list) {
            return list.stream().map(Rendering::of).collect(Collectors.joining(",", "[", "]"));
        }
        if (value instanceof Collection<?> set) {
            return new TreeSet<>(set.stream().map(Rendering::of).toList()).toString();
        }
        if (value instanceof Double number) {
            return Double.toHexString(number);
        }
        return String.valueOf(value);
    }

    private static @Nullable Object read(Record record, RecordComponent component) {
        try {
            var accessor = component.getAccessor();
            accessor.setAccessible(true);
            return accessor.invoke(record);
        } catch (ReflectiveOperationException failed) {
            throw new IllegalStateException("cannot read " + component, failed);
        }
    }

    static String digest(String text) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash);
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform has SHA-256", missing);
        }
    }
}
