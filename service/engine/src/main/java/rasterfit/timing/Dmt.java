package rasterfit.timing;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** The display monitor timings of VESA DMT 1.13, by their one-byte ids. */
public final class Dmt {
    private static final Map<Integer, MonitorTiming> BY_ID = read();
    private static final List<MonitorTiming> ALL = List.copyOf(BY_ID.values());
    private static final Map<Integer, MonitorTiming> BY_STANDARD_CODE = ALL.stream()
            .filter(timing -> timing.standardCode() != null)
            .collect(Collectors.toUnmodifiableMap(MonitorTiming::standardCode, timing -> timing));

    private Dmt() {}

    /**
     * One timing.
     *
     * @param id as DMT numbers it: 0x01 to 0x58
     * @param timing the border, where a timing has one, counted to the porches
     * @param pictureAspect width / height
     * @param reducedBlanking whether it is a timing of reduced blanking
     * @param standardCode the two bytes of an EDID's standard timing that mean it, first byte high; absent for most
     * @param cvtCode the three bytes of an EDID's CVT code that mean it, first byte high; absent for most
     */
    public record MonitorTiming(
            int id,
            RasterTiming timing,
            Border border,
            Rational pictureAspect,
            boolean reducedBlanking,
            @Nullable Integer standardCode,
            @Nullable Integer cvtCode) {}

    /** All timings, by ascending id. */
    public static List<MonitorTiming> all() {
        return ALL;
    }

    /** Empty for a number that DMT does not give. */
    public static Optional<MonitorTiming> find(int id) {
        return Optional.ofNullable(BY_ID.get(id));
    }

    /**
     * The timing that the two bytes of a standard timing mean; empty if DMT gives none, and the timing then follows from a
     * formula (E-EDID A2 §3.9).
     *
     * @param code first byte high: 0x3140 is 640 × 480 at 60 Hz
     */
    public static Optional<MonitorTiming> findByStandardCode(int code) {
        return Optional.ofNullable(BY_STANDARD_CODE.get(code));
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
        return new MonitorTiming(
                Integer.decode(cells[0]),
                timing,
                border(cells[15]),
                Rational.parse(cells[12].replace(':', '/')),
                cells.length > 16 && cells[16].equals("RB"),
                code(cells[13]),
                code(cells[14]));
    }

    private static @Nullable Integer code(String cell) {
        return cell.equals("-") ? null : Integer.valueOf(cell, 16);
    }

    private static Border border(String cell) {
        int comma = cell.indexOf(',');
        return comma < 0
                ? Border.NONE
                : new Border(Integer.parseInt(cell.substring(0, comma)), Integer.parseInt(cell.substring(comma + 1)));
    }
}
