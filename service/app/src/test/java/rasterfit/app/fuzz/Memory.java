package rasterfit.app.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.function.Supplier;

/** Bounds what one computation may allocate, whether or not it is kept. */
public final class Memory {
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private Memory() {}

    /** The result of a computation that allocates at most so many bytes in this thread. */
    public static <T> T within(long mostBytes, Supplier<T> computation) {
        long before = THREADS.getCurrentThreadAllocatedBytes();
        T result = computation.get();
        assertThat(THREADS.getCurrentThreadAllocatedBytes() - before)
                .as("bytes allocated")
                .isLessThanOrEqualTo(mostBytes);
        return result;
    }
}
