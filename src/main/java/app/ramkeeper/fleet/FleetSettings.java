package app.ramkeeper.fleet;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Settings of the register.
 *
 * @param areaKm a site further than this from every depot is asked about
 */
@ConfigurationProperties("ramkeeper.fleet")
record FleetSettings(@DefaultValue("250") double areaKm) {}
