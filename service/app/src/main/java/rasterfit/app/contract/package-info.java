/** The published contract (OpenAPI): what is required, what may be absent, and which errors each operation can give. */
@NullMarked
package rasterfit.app.contract;

import org.jspecify.annotations.NullMarked;
