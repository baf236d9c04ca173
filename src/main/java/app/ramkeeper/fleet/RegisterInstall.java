package app.ramkeeper.fleet;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Puts an install on the register with its first configuration.
 *
 * @param baseline taken at commissioning, if it is known
 * @param pumps the pumps that stand there now, in the order of their places; a single pump as a rule
 */
public record RegisterInstall(
        SiteId site,
        InstallDetails install,
        ConfigurationDetails configuration,
        @Nullable BaselineDetails baseline,
        List<PumpDetails> pumps) {}
