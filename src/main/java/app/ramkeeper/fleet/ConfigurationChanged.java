package app.ramkeeper.fleet;

import java.time.LocalDate;

/** An install has a new layout or setting from a day on. */
public record ConfigurationChanged(InstallId install, ConfigurationId configuration, LocalDate from) {}
