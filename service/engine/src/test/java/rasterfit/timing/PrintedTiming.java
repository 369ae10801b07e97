package rasterfit.timing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rasterfit.quantity.Rational;

/**
 * The numbers of one timing as {@code edid-decode} prints it in full. Borders stand apart from the porches; vertical porches
 * are those of a field, active lines those of a frame.
 *
 * @param remark what stands behind the numbers, in brackets
 * @param verticalPolarity negative where none is printed, see {@link #composite}
 * @param composite no vertical polarity is printed: sync is composite
 */
public record PrintedTiming(
        String name,
        String remark,
        int horizontalActive,
        int verticalActive,
        boolean interlaced,
        Rational fieldRateHz,
        Rational lineRateHz,
        Rational pixelClockHz,
        int horizontalFrontPorch,
        int horizontalSync,
        int horizontalBackPorch,
        int horizontalBorder,
        Polarity horizontalPolarity,
        int verticalFrontPorch,
        int verticalSync,
        int verticalBackPorch,
        int verticalBorder,
        Polarity verticalPolarity,
        boolean composite,
        boolean halfLine) {

    private static final Pattern HEAD = Pattern.compile(
            "(\\S.*?):\\s+(\\d+)x(\\d+)(i?)\\s+([\\d.]+) Hz\\s+\\d+:\\d+\\s+([\\d.]+) kHz\\s+([\\d.]+) MHz(.*)");
    private static final Pattern MEMBER = Pattern.compile("([HV][a-z]+)\\s+([-\\w]+)");

    /** The timings among the lines of a whole print, in order. */
    public static List<PrintedTiming> among(List<String> lines) {
        List<String> bare = lines.stream().map(String::strip).toList();
        List<PrintedTiming> timings = new ArrayList<>();
        for (int i = 0; i < bare.size(); i++) {
            if (isHead(bare.get(i))) {
                timings.add(at(bare, i));
            }
        }
        return timings;
    }

    /** All timings of a print, in order; a line that is none of a timing ends in an exception. */
    static List<PrintedTiming> read(List<String> lines) {
        List<PrintedTiming> timings = new ArrayList<>();
        for (int i = 0; i < lines.size(); ) {
            timings.add(at(lines, i));
            i += linesAt(lines, i);
        }
        return timings;
    }

    /** Whether this line, without its indent, is the head of a timing. */
    public static boolean isHead(String line) {
        return HEAD.matcher(line).matches();
    }

    /** The timing whose head is line {@code i}, which is not indented; it takes {@link #linesAt} lines. */
    public static PrintedTiming at(List<String> lines, int i) {
        Matcher head = HEAD.matcher(lines.get(i));
        if (!head.matches()) {
            throw new IllegalArgumentException("not the head of a timing: " + lines.get(i));
        }
        boolean interlaced = !head.group(4).isEmpty();
        Map<String, String> members = members(lines.get(i + 1));
        members.putAll(members(lines.get(i + 2).replaceAll("V(front|back) +\\+0\\.5.*", "")));
        return new PrintedTiming(
                head.group(1).trim(),
                head.group(8).trim(),
                Integer.parseInt(head.group(2)),
                Integer.parseInt(head.group(3)),
                interlaced,
                number(head.group(5)),
                number(head.group(6)).times(1000),
                number(head.group(7)).times(1_000_000),
                count(members, "Hfront"),
                count(members, "Hsync"),
                count(members, "Hback"),
                Integer.parseInt(members.getOrDefault("Hborder", "0")),
                polarity(members, "Hpol"),
                count(members, "Vfront"),
                count(members, "Vsync"),
                count(members, "Vback"),
                Integer.parseInt(members.getOrDefault("Vborder", "0")),
                polarity(members, "Vpol"),
                !members.containsKey("Vpol"),
                isOnHalfLine(lines.get(i + 2)));
    }

    public static int linesAt(List<String> lines, int i) {
        return isOnHalfLine(lines.get(i + 2)) || evenFieldFollows(lines, i + 3) ? 4 : 3;
    }

    /** Lines per frame, borders and half lines included. */
    public int verticalTotal() {
        int fields = interlaced ? 2 : 1;
        return wholeActiveLines()
                + fields * (verticalFrontPorch + verticalSync + verticalBackPorch + 2 * verticalBorder)
                + (halfLine ? 1 : 0);
    }

    /** Whether the formula left less than nothing for a porch, or nothing for sync. */
    public boolean hasNoRoom() {
        return horizontalFrontPorch < 0 || horizontalBackPorch < 0 || horizontalSync <= 0 || verticalBackPorch < 0;
    }

    /** It prints odd numbers of active lines for interlaced timings too, if asked for them. */
    public int wholeActiveLines() {
        int fields = interlaced ? 2 : 1;
        return verticalActive / fields * fields;
    }

    /** The names of all members in which a timing differs; sizes and rates are left to the caller. */
    public Set<String> differingFrom(RasterTiming ours, Border border, Rational clockToleranceHz) {
        Set<String> members = new LinkedHashSet<>();
        int across = border.horizontalPixels();
        int down = border.verticalLines();
        compare(members, "horizontal front porch", ours.horizontalFrontPorch() - across, horizontalFrontPorch());
        compare(members, "horizontal sync", ours.horizontalSync(), horizontalSync());
        compare(members, "horizontal back porch", ours.horizontalBackPorch() - across, horizontalBackPorch());
        compare(members, "horizontal border", across, horizontalBorder());
        compare(members, "vertical front porch", ours.verticalFrontPorch() - down, verticalFrontPorch());
        compare(members, "vertical sync", ours.verticalSync(), verticalSync());
        compare(members, "vertical back porch", ours.verticalBackPorch() - down, verticalBackPorch());
        compare(members, "vertical border", down, verticalBorder());
        compare(
                members,
                "vertical total",
                ours.verticalTotal() - ours.verticalActive(),
                verticalTotal() - wholeActiveLines());
        compare(members, "scan", ours.scan() == Scan.INTERLACED, interlaced());
        compare(members, "horizontal polarity", ours.horizontalPolarity(), horizontalPolarity());
        compare(members, "vertical polarity", ours.verticalPolarity(), verticalPolarity());
        Rational deviation = ours.pixelClock().hz().minus(pixelClockHz()).abs();
        compare(members, "pixel clock", false, deviation.isGreaterThan(clockToleranceHz));
        return members;
    }

    private static void compare(Set<String> members, String name, Object ours, Object theirs) {
        if (!ours.equals(theirs)) {
            members.add(name);
        }
    }

    private static boolean isOnHalfLine(String line) {
        return line.contains("+0.5");
    }

    private static boolean evenFieldFollows(List<String> lines, int at) {
        return at < lines.size() && lines.get(at).trim().startsWith("Vfront");
    }

    private static Map<String, String> members(String line) {
        Map<String, String> members = new LinkedHashMap<>();
        Matcher member = MEMBER.matcher(line);
        while (member.find()) {
            members.put(member.group(1), member.group(2));
        }
        return members;
    }

    private static int count(Map<String, String> members, String name) {
        String written = members.get(name);
        if (written == null) {
            throw new IllegalArgumentException("no " + name + " among " + members);
        }
        return Integer.parseInt(written);
    }

    private static Polarity polarity(Map<String, String> members, String name) {
        return "P".equals(members.get(name)) ? Polarity.POSITIVE : Polarity.NEGATIVE;
    }

    private static Rational number(String written) {
        return Rational.of(new BigDecimal(written));
    }
}
