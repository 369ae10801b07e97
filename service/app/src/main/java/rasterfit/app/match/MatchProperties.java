package rasterfit.app.match;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How much one match may cost.
 *
 * @param maxSettings settings to enumerate over all routes
 * @param maxTime wall-clock time; also what a client is told to wait before it tries again
 */
@ConfigurationProperties("rasterfit.match")
record MatchProperties(
        @DefaultValue("2000000") long maxSettings,
        @DefaultValue("10s") Duration maxTime) {}
