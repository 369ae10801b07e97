package rasterfit.scenario;

import java.util.List;

/** The words of one statement, read from left to right. */
final class Words {
    private final List<Word> words;
    private final Place end;
    private int next;

    /** @param end where something is told to be missing */
    Words(List<Word> words, Place end) {
        this.words = List.copyOf(words);
        this.end = end;
    }

    boolean hasNext() {
        return next < words.size();
    }

    Word peek() {
        if (!hasNext()) {
            throw end.fault("something is missing at the end of the statement");
        }
        return words.get(next);
    }

    Word take() {
        Word word = peek();
        next++;
        return word;
    }

    void expect(String text) {
        Word word = take();
        if (!word.is(text)) {
            throw word.fault("expected " + text);
        }
    }

    void expectEnd() {
        if (hasNext()) {
            throw peek().fault("not understood here");
        }
    }

    Place place() {
        return hasNext() ? peek().place() : end;
    }
}
