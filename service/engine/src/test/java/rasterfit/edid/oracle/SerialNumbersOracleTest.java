package rasterfit.edid.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rasterfit.EdidDecode;
import rasterfit.Tables;
import rasterfit.edid.DisplayIdBuilder;
import rasterfit.edid.EdidBuilder;
import rasterfit.edid.EdidPrivacy;

/** {@code edid-decode} finds no serial number where they were taken out, and nothing wrong that was not wrong before. */
class SerialNumbersOracleTest {
    private static final long SEED = 20_250_411;

    @Test
    void theOracleSeesNoSerialNumberInSuppliedEdids() throws IOException {
        List<byte[]> edids = new ArrayList<>();
        try (Stream<Path> folder = Files.list(Tables.sharedFile("edid"))) {
            for (Path file : folder.filter(one -> one.toString().endsWith(".edid"))
                    .sorted()
                    .toList()) {
                edids.add(Files.readAllBytes(file));
            }
        }
        assertThat(seenIn(edids)).isGreaterThan(40);
    }

    @Test
    void theOracleSeesNoSerialNumberInEdidsByChance() {
        Random random = new Random(SEED);
        List<byte[]> edids = new ArrayList<>();
        for (byte[] edid : new RandomEdids(SEED).next(150)) {
            edid[0x0C] = (byte) random.nextInt(1, 256);
            if (random.nextBoolean()) {
                System.arraycopy(serial(random), 0, edid, 0x6C, 18);
            }
            edids.add(EdidBuilder.withChecksums(edid));
        }
        for (int i = 0; i < 50; i++) {
            edids.add(EdidBuilder.digital(4)
                    .extension(DisplayIdBuilder.version(i % 2 == 0 ? 0x12 : 0x20)
                            .block(i % 2 == 0 ? 0x00 : 0x20, 0, product(random))
                            .block(
                                    i % 2 == 0 ? 0x0A : 0x29,
                                    0,
                                    random.ints(16, 'A', 'Z').toArray())
                            .block(i % 2 == 0 ? 0x12 : 0x28, 0, tiled(random))
                            .build())
                    .build());
        }
        assertThat(seenIn(edids)).isGreaterThan(200);
    }

    /** How many serial numbers the tool saw before; afterwards it sees none and complains of nothing new. */
    private static int seenIn(List<byte[]> edids) {
        List<List<String>> before = EdidDecode.checked(edids);
        List<List<String>> after = EdidDecode.checked(
                edids.stream().map(EdidPrivacy::withoutSerialNumbers).toList());
        int seen = 0;
        for (int i = 0; i < edids.size(); i++) {
            seen += serials(before.get(i)).size();
            assertThat(serials(after.get(i))).as("EDID " + i).isEmpty();
            assertThat(complaints(before.get(i))).as("EDID " + i).containsAll(complaints(after.get(i)));
        }
        return seen;
    }

    /** Serial numbers that are not all zeros. */
    private static List<String> serials(List<String> printed) {
        return printed.stream()
                .map(String::strip)
                .filter(line -> line.contains("Serial Number:") || line.startsWith("Container ID:"))
                .filter(line -> !line.substring(line.indexOf(':') + 1).strip().matches("['0-]*"))
                .toList();
    }

    /** What follows the description: warnings, failures and the verdict. */
    private static List<String> complaints(List<String> printed) {
        int from = printed.stream().map(String::strip).toList().indexOf("Warnings:");
        int failures = printed.stream().map(String::strip).toList().indexOf("Failures:");
        int first = from < 0 ? failures : from;
        return first < 0 ? List.of() : printed.subList(first, printed.size());
    }

    private static byte[] serial(Random random) {
        byte[] descriptor = new byte[18];
        descriptor[3] = (byte) 0xFF;
        byte[] text =
                String.format("%012d\n", random.nextInt(Integer.MAX_VALUE)).getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(text, 0, descriptor, 5, text.length);
        return descriptor;
    }

    private static int[] product(Random random) {
        return new int[] {
            1, 2, 3, 4, 5, random.nextInt(1, 256), random.nextInt(256), random.nextInt(256), 7, 10, 20, 3, 'A', 'B', 'C'
        };
    }

    private static int[] tiled(Random random) {
        int[] tiled = {0x80, 1, 2, 3, 4, 5, 6, 7, 0, 0, 0, 0, 0, 'A', 'B', 'C', 7, 8, 1, 2, 3, 4};
        for (int i = 18; i < 22; i++) {
            tiled[i] = random.nextInt(1, 256);
        }
        return tiled;
    }
}
