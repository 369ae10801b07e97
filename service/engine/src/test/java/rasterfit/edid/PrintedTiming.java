package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/**
 * A timing as {@code edid-decode -L} prints it: a line with size, rates and clock, one with the horizontal counts, one or (two
 * fields) two with the vertical ones. Borders are counted to the porches, as in {@link RasterTiming}.
 *
 * @param kind {@code DTD}, {@code CVT}, {@code DMT 0x04}, {@code VIC 16}
 * @param timing with the lines of a frame that the counts of the two fields give
 * @param remarks in brackets behind the clock
 */
record PrintedTiming(String kind, RasterTiming timing, String remarks) {
    private static final Pattern HEAD =
            Pattern.compile("\\s+(\\S[^:]*):\\s+(\\d+)x(\\d+)(i?)\\s+[\\d.]+ Hz\\s+\\S+\\s+[\\d.]+ kHz"
                    + "\\s+([\\d.]+) MHz(?: \\((.*)\\))?");
    private static final Pattern HORIZONTAL =
            Pattern.compile("\\s+Hfront\\s+(\\d+) Hsync\\s+(\\d+) Hback\\s+(\\d+) Hpol ([PN])(?: Hborder (\\d+))?.*");
    private static final Pattern VERTICAL =
            Pattern.compile("\\s+Vfront\\s+(\\d+) Vsync\\s+(\\d+) Vback\\s+(\\d+) Vpol ([PN])(?: Vborder (\\d+))?.*");

    boolean isPreferred() {
        return remarks.contains("preferred");
    }

    boolean is420() {
        return remarks.contains("YCbCr 4:2:0");
    }

    static List<PrintedTiming> read(List<String> lines) {
        List<PrintedTiming> timings = new ArrayList<>();
        for (int i = 0; i + 2 < lines.size(); i++) {
            Matcher head = HEAD.matcher(lines.get(i));
            Matcher horizontal = HORIZONTAL.matcher(lines.get(i + 1));
            Matcher vertical = VERTICAL.matcher(lines.get(i + 2));
            if (head.matches() && horizontal.matches() && vertical.matches()) {
                timings.add(read(head, horizontal, vertical));
            }
        }
        return timings;
    }

    private static PrintedTiming read(Matcher head, Matcher horizontal, Matcher vertical) {
        boolean isInterlaced = !head.group(4).isEmpty();
        int lines = Integer.parseInt(head.group(3));
        int sideBorder = number(horizontal, 5);
        int topBorder = number(vertical, 5);
        int blank = number(vertical, 1) + number(vertical, 2) + number(vertical, 3) + 2 * topBorder;
        RasterTiming timing = new RasterTiming(
                Frequency.parseHz(head.group(5)).times(1_000_000),
                number(head, 2),
                number(horizontal, 1) + sideBorder,
                number(horizontal, 2),
                number(horizontal, 3) + sideBorder,
                lines,
                number(vertical, 1) + topBorder,
                number(vertical, 2),
                number(vertical, 3) + topBorder,
                lines + (isInterlaced ? 2 * blank + 1 : blank),
                isInterlaced ? Scan.INTERLACED : Scan.PROGRESSIVE,
                polarity(horizontal),
                polarity(vertical));
        String remarks = head.group(6);
        return new PrintedTiming(head.group(1).replaceAll(" +", " "), timing, remarks == null ? "" : remarks);
    }

    private static int number(Matcher matcher, int group) {
        String text = matcher.group(group);
        return text == null ? 0 : Integer.parseInt(text);
    }

    private static Polarity polarity(Matcher matcher) {
        return matcher.group(4).equals("P") ? Polarity.POSITIVE : Polarity.NEGATIVE;
    }
}
