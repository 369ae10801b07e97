package rasterfit.app.csv;

import rasterfit.app.problem.ProblemType;

/**
 * Something in a row that cannot be read.
 *
 * @param column the path of the value, whether or not the table has a column for it
 */
public record CellFault(ProblemType type, String column, String message) {}
