package rasterfit.app.transfer;

import java.util.concurrent.CancellationException;
import org.jspecify.annotations.Nullable;
import rasterfit.app.idempotency.IdempotentRequest;

/** An import that this instance works on, with its progress. Written by the thread that works, read by the one that tells. */
final class ImportJob {
    private final String id;
    private final String owner;
    private final IdempotentRequest request;
    private final SentText text;
    private final boolean isOnlyChecked;
    private final @Nullable String ifMatch;
    private volatile int checked;
    private volatile int done;
    private volatile @Nullable Integer total;
    private volatile boolean isEnded;

    ImportJob(
            String id,
            String owner,
            IdempotentRequest request,
            SentText text,
            boolean isOnlyChecked,
            @Nullable String ifMatch) {
        this.id = id;
        this.owner = owner;
        this.request = request;
        this.text = text;
        this.isOnlyChecked = isOnlyChecked;
        this.ifMatch = ifMatch;
    }

    String id() {
        return id;
    }

    String owner() {
        return owner;
    }

    IdempotentRequest request() {
        return request;
    }

    SentText text() {
        return text;
    }

    boolean isOnlyChecked() {
        return isOnlyChecked;
    }

    /** Which state of the catalogue is changed; absent where any will do. */
    @Nullable
    String ifMatch() {
        return ifMatch;
    }

    int checked() {
        return checked;
    }

    int done() {
        return done;
    }

    @Nullable
    Integer total() {
        return total;
    }

    /** @throws CancellationException if it is to end */
    void checked(int items) {
        goOn();
        checked = items;
    }

    void total(int items) {
        total = items;
    }

    /** @throws CancellationException if it is to end */
    void done(int items) {
        goOn();
        done = items;
    }

    /** The thread that works on it finds out at the next item. */
    void end() {
        isEnded = true;
    }

    private void goOn() {
        if (isEnded) {
            throw new CancellationException("import " + id + " is to end");
        }
    }
}
