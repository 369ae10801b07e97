package rasterfit.app.collection;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rasterfit.app.resource.Precondition;
import tools.jackson.databind.node.ObjectNode;

/**
 * Entity tags of records: the revision and, behind a point, a digest of what the answer adds. That may change without the record,
 * and a strong tag changes with every answer (RFC 9110 §8.8.1). What a writer believes is about the revision alone.
 */
final class RecordTag {
    private static final Pattern WITH_ADDED = Pattern.compile("\"(\\d+)\\.[0-9a-f]+\"");
    private static final int DIGEST_BYTES = 8;

    private RecordTag() {}

    static String of(long revision, ObjectNode added) {
        return added.isEmpty() ? Precondition.tag(revision) : "\"" + revision + "." + digest(added.toString()) + "\"";
    }

    static Precondition believed(@Nullable String ifMatch, @Nullable String ifNoneMatch) {
        return new Precondition(revisions(ifMatch), revisions(ifNoneMatch));
    }

    private static @Nullable String revisions(@Nullable String tags) {
        return tags == null ? null : WITH_ADDED.matcher(tags).replaceAll("\"$1\"");
    }

    /** Whether a client that has one of these answers has this one; weak tags match here (RFC 9110 §13.1.2). */
    static boolean isAmong(String tags, String tag) {
        return tags.strip().equals("*")
                || Arrays.stream(tags.split(",", -1))
                        .map(String::strip)
                        .map(member -> member.startsWith("W/") ? member.substring(2) : member)
                        .anyMatch(tag::equals);
    }

    private static String digest(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest, 0, DIGEST_BYTES);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
