/**
 * Everything that can speak against a chain or should be said about it. {@link rasterfit.rule.Rules} lists all rules; the
 * classes beside it ask them, an area each. Rules take quantities and gear, never the types of a match.
 */
@NullMarked
package rasterfit.rule;

import org.jspecify.annotations.NullMarked;
