package rasterfit.app.resource;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;

/**
 * What a writer believes the stored state to be ({@code If-Match}, {@code If-None-Match}; RFC 9110 §13.1). Tags are strong:
 * the revision of an item in quotes.
 */
public record Precondition(
        @Nullable String ifMatch, @Nullable String ifNoneMatch) {

    public static String tag(long revision) {
        return '"' + Long.toString(revision) + '"';
    }

    /**
     * @param revision of what is stored, absent if nothing is
     * @throws ProblemException 428 without a belief about what is there (RFC 6585 §3), 412 with a wrong one
     */
    public void check(@Nullable Long revision) {
        if (ifNoneMatch != null && matches(ifNoneMatch, revision)) {
            throw new ProblemException(
                    ProblemType.PRECONDITION_FAILED,
                    "There is already one, of revision " + revision + "; If-None-Match asked for none.");
        }
        if (ifMatch != null && !matches(ifMatch, revision)) {
            String now = revision == null ? "there is none any more" : "it is now " + tag(revision);
            throw new ProblemException(
                    ProblemType.PRECONDITION_FAILED,
                    "The state named by If-Match is not the current one; " + now + ".");
        }
        if (ifMatch == null && revision != null) {
            throw new ProblemException(
                    ProblemType.PRECONDITION_REQUIRED,
                    "To change what is there, name in If-Match the state that was read; it is now " + tag(revision)
                            + ".");
        }
    }

    /** Whether a client that has one of these states has the current one; weak tags match here (RFC 9110 §13.1.2). */
    public static boolean matchesWeakly(String tags, long revision) {
        return tags.strip().equals("*")
                || members(tags).stream()
                        .map(member -> member.startsWith("W/") ? member.substring(2) : member)
                        .anyMatch(tag(revision)::equals);
    }

    private static boolean matches(String tags, @Nullable Long revision) {
        if (revision == null) {
            return false;
        }
        return tags.strip().equals("*") || members(tags).contains(tag(revision));
    }

    private static List<String> members(String tags) {
        return List.of(tags.split(",", -1)).stream().map(String::strip).toList();
    }
}
