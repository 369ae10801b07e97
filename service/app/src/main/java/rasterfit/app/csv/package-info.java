/**
 * Documents as tables for people who work with spreadsheets: one row for each document, one column for each value, named by
 * its path. {@link rasterfit.app.csv.Table} is the entry point. What is written is read back to the same text, character by
 * character.
 */
@NullMarked
package rasterfit.app.csv;

import org.jspecify.annotations.NullMarked;
