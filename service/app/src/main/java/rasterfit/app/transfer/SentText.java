package rasterfit.app.transfer;

import java.io.BufferedReader;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.Reader;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rasterfit.app.catalogue.Kind;

/**
 * The body of an import, put aside in a temporary file: the request may be answered before it is read, and several large ones
 * would fill the memory. The file has no name any more once it is open, where the system allows that, so that none stays
 * behind. Read by one thread at a time.
 */
final class SentText implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(SentText.class);

    private static final int BYTE_ORDER_MARK = '\uFEFF';

    private final FileChannel file;
    private final String sha256;
    private final @Nullable Kind table;

    private SentText(FileChannel file, String sha256, @Nullable Kind table) {
        this.file = file;
        this.sha256 = sha256;
        this.table = table;
    }

    /** @param table the kind of a table; null for the JSON document */
    static SentText of(InputStream body, @Nullable Kind table) throws IOException {
        FileChannel file = FileChannel.open(
                Files.createTempFile("rasterfit-import-", ".tmp"),
                StandardOpenOption.READ,
                StandardOpenOption.WRITE,
                StandardOpenOption.DELETE_ON_CLOSE);
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            OutputStream out = new DigestOutputStream(Channels.newOutputStream(file), digest);
            body.transferTo(out);
            out.flush();
            return new SentText(file, HexFormat.of().formatHex(digest.digest()), table);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        } catch (IOException | RuntimeException unread) {
            file.close();
            throw unread;
        }
    }

    /** The kind whose table it is; absent for the JSON document. */
    @Nullable
    Kind table() {
        return table;
    }

    String sha256() {
        return sha256;
    }

    /** From the beginning, in UTF-8 (RFC 8259 §8.1, RFC 7111 §4.1), without a byte order mark. */
    Reader characters() throws IOException {
        file.position(0);
        InputStream kept = new FilterInputStream(Channels.newInputStream(file)) {
            /** The file stays open to be read again. */
            @Override
            public void close() {}
        };
        Reader reader = new BufferedReader(new InputStreamReader(
                kept,
                StandardCharsets.UTF_8
                        .newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT)));
        reader.mark(1);
        if (reader.read() != BYTE_ORDER_MARK) {
            reader.reset();
        }
        return reader;
    }

    @Override
    public void close() {
        try {
            file.close();
        } catch (IOException kept) {
            LOG.warn("The body of an import stays behind", kept);
        }
    }
}
