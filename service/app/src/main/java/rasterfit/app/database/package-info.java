/**
 * PostgreSQL under the service. {@link rasterfit.app.database.EmbeddedDatabaseConfiguration} starts the server that comes with
 * the service; with {@code spring.datasource.url} set that server is used and nothing here runs.
 */
@NullMarked
package rasterfit.app.database;

import org.jspecify.annotations.NullMarked;
