package rasterfit.app.display;

import java.io.ByteArrayOutputStream;
import rasterfit.app.problem.Problems;

/** Bytes written in hexadecimal digits, in pairs; white space may stand between the pairs. */
final class HexText {
    private HexText() {}

    /**
     * Reads a text.
     *
     * @param pointer where the text stands in the body; empty for the whole body
     * @throws rasterfit.app.problem.ProblemException (400) at the first character that fits no pair
     */
    static byte[] read(String pointer, String text) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(text.length() / 2);
        int at = 0;
        while (at < text.length()) {
            if (Character.isWhitespace(text.charAt(at))) {
                at++;
                continue;
            }
            int high = Character.digit(text.charAt(at), 16);
            int low = at + 1 < text.length() ? Character.digit(text.charAt(at + 1), 16) : -1;
            if (high < 0 || low < 0) {
                throw Problems.wrongType(
                        pointer,
                        "pairs of hexadecimal digits, with white space at most between them; the text breaks this at"
                                + " character " + at);
            }
            bytes.write(high << 4 | low);
            at += 2;
        }
        return bytes.toByteArray();
    }
}
