package rasterfit.timing;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** The display monitor timings of VESA DMT 1.13, by their one-byte ids. */
public final class Dmt {
    private static final Map<Integer, MonitorTiming> BY_ID = read();
    private static final List<MonitorTiming> ALL = List.copyOf(BY_ID.values());

    private Dmt() {}

    /**
     * One timing.
     *
     * @param id as DMT numbers it: 0x01 to 0x58
     * @param timing borders, where a timing has some, counted to the porches
     * @param pictureAspect width / height
     * @param reducedBlanking whether it is a timing of reduced blanking
     */
    public record MonitorTiming(int id, RasterTiming timing, Rational pictureAspect, boolean reducedBlanking) {}

    /** All timings, by ascending id. */
    public static List<MonitorTiming> all() {
        return ALL;
    }

    /** Empty for a number that DMT does not give. */
    public static Optional<MonitorTiming> find(int id) {
        return Optional.ofNullable(BY_ID.get(id));
    }

    private static Map<Integer, MonitorTiming> read() {
        Map<Integer, MonitorTiming> byId = new TreeMap<>();
        DmtTable.ROWS.lines().map(Dmt::readRow).forEach(timing -> byId.put(timing.id(), timing));
        return Collections.unmodifiableMap(byId);
    }

    private static MonitorTiming readRow(String row) {
        String[] cells = row.trim().split(" +", -1);
        int scanAt = cells[5].length() - 1;
        RasterTiming timing = new RasterTiming(
                Frequency.ofHz(Long.parseLong(cells[11]) * 1000),
                Integer.parseInt(cells[1]),
                Integer.parseInt(cells[2]),
                Integer.parseInt(cells[3]),
                Integer.parseInt(cells[4]),
                Integer.parseInt(cells[5].substring(0, scanAt)),
                Integer.parseInt(cells[6]),
                Integer.parseInt(cells[7]),
                Integer.parseInt(cells[8]),
                Integer.parseInt(cells[9]),
                cells[5].charAt(scanAt) == 'i' ? Scan.INTERLACED : Scan.PROGRESSIVE,
                Polarity.ofSign(cells[10].charAt(0)),
                Polarity.ofSign(cells[10].charAt(1)));
        boolean reduced = cells.length > 13 && cells[13].equals("RB");
        return new MonitorTiming(
                Integer.decode(cells[0]), timing, Rational.parse(cells[12].replace(':', '/')), reduced);
    }
}
