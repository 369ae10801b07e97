package rasterfit.app.database;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/** Says which process owns a data directory. The operating system frees it when the process ends, however it ends. */
final class DirectoryLock implements AutoCloseable {
    private final FileChannel channel;

    private DirectoryLock(FileChannel channel) {
        this.channel = channel;
    }

    /** @throws DirectoryInUseException if a live process, this one included, owns the directory */
    static DirectoryLock take(Path directory) {
        try {
            OwnOnly.create(directory);
            FileChannel channel = FileChannel.open(
                    directory.resolve("service.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            if (tryLock(channel) == null) {
                channel.close();
                throw new DirectoryInUseException(directory);
            }
            return new DirectoryLock(channel);
        } catch (IOException unusable) {
            throw new UncheckedIOException("the data directory " + directory + " cannot be used", unusable);
        }
    }

    private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException heldHere) {
            return null;
        }
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
