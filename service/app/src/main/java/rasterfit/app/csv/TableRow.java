package rasterfit.app.csv;

import java.util.List;
import tools.jackson.databind.node.ObjectNode;

/**
 * A row of a table.
 *
 * @param line on which it begins in the text, from 1
 * @param document what could be read of it
 * @param faults what could not
 */
public record TableRow(long line, ObjectNode document, List<CellFault> faults) {}
