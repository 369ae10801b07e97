package rasterfit.match.tune;

/** Which lines to keep when not all fit: lose the fewest drawn lines, then balance top and bottom, then the earliest. */
final class CropWindow {
    private CropWindow() {}

    /**
     * The first line to keep, 0-based within the captured lines.
     *
     * @param usedFirst first drawn line, in the same count
     */
    static int first(int lines, int kept, int usedFirst, int usedLines) {
        int best = 0;
        int bestLost = Integer.MAX_VALUE;
        int bestTilt = Integer.MAX_VALUE;
        for (int first = 0; first <= lines - kept; first++) {
            int above = usedFirst - first;
            int below = first + kept - (usedFirst + usedLines);
            int lost = Math.max(0, -above) + Math.max(0, -below);
            int tilt = Math.abs(above - below);
            if (lost < bestLost || (lost == bestLost && tilt < bestTilt)) {
                best = first;
                bestLost = lost;
                bestTilt = tilt;
            }
        }
        return best;
    }
}
