package rasterfit.app.transfer;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.csv.CellFault;
import rasterfit.app.csv.Table;
import rasterfit.app.csv.TableRow;
import rasterfit.app.problem.ProblemError;
import tools.jackson.databind.ObjectMapper;

/** A table of gear of one kind, an item in each row. */
final class CsvDocument {
    private final Kind kind;
    private final Table table;
    private final ItemCollector collector;

    /** On which each row begins. */
    private final List<Long> lines = new ArrayList<>();

    CsvDocument(Kind kind, ObjectMapper mapper, ItemCollector collector) {
        this.kind = kind;
        this.table = Tables.of(kind, mapper);
        this.collector = collector;
    }

    /** @throws rasterfit.app.problem.ProblemException for text that is no table; faults of rows go to the collector */
    void read(Reader text) throws IOException {
        table.read(text, this::row);
    }

    private void row(TableRow row) {
        String pointer = pointer(lines.size());
        lines.add(row.line());
        if (row.faults().isEmpty()) {
            collector.add(kind, row.document(), pointer, row.line());
        } else {
            collector.count();
            for (CellFault fault : row.faults()) {
                String path = fault.column().isEmpty() ? "" : "/" + fault.column();
                collector.faults().add(fault.type(), ProblemError.at(pointer + path, fault.message()));
            }
        }
    }

    /** The same errors with lines and columns. */
    List<ProblemError> placed(List<ProblemError> errors) {
        return errors.stream().map(this::placed).toList();
    }

    private ProblemError placed(ProblemError error) {
        String path = String.valueOf(error.pointer()).substring(pointer(0).length() - 1);
        int slash = path.indexOf('/');
        int row = Integer.parseInt(slash < 0 ? path : path.substring(0, slash));
        return ProblemError.inText(
                error.pointer(),
                error.message(),
                error.limit(),
                lines.get(row),
                null,
                slash < 0 ? null : table.column(path.substring(slash + 1)));
    }

    private String pointer(int row) {
        return "/" + kind.path() + "/" + row;
    }
}
