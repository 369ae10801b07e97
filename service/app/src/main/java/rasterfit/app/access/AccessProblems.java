package rasterfit.app.access;

import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;

/** What callers are told who may not do what they ask for, with the challenge of RFC 6750 §3. */
final class AccessProblems {
    private static final String CHALLENGE = "Bearer realm=\"rasterfit\"";

    private AccessProblems() {}

    /** 401 without an error code, since the client may not have known that a token is needed (RFC 6750 §3.1). */
    static ProblemException tokenNeeded() {
        return challenged(
                ProblemType.UNAUTHENTICATED,
                "A token is needed here, in the header field Authorization: Bearer <token>.",
                CHALLENGE);
    }

    /** 401, and nothing about which of these it is. */
    static ProblemException tokenInvalid() {
        return challenged(
                ProblemType.UNAUTHENTICATED,
                "What was sent in the header field Authorization is no token that holds here: it is malformed, unknown,"
                        + " expired or revoked.",
                CHALLENGE + ", error=\"invalid_token\"");
    }

    /** 403 for a token that allows other things. */
    static ProblemException scopeNeeded(Scope scope) {
        return challenged(
                ProblemType.FORBIDDEN,
                "This needs a token with the scope " + scope + ".",
                CHALLENGE + ", error=\"insufficient_scope\", scope=\"" + scope + "\"");
    }

    /** 403 for everybody. */
    static ProblemException forNobody() {
        return new ProblemException(ProblemType.FORBIDDEN, "Nobody may do this.");
    }

    private static ProblemException challenged(ProblemType type, String detail, String challenge) {
        return new ProblemException(type, detail).withHeader("WWW-Authenticate", challenge);
    }
}
