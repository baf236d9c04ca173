package app.ramkeeper.fleet;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.test.context.TestComponent;

/** Makes installs for tests. */
@TestComponent
public class Installs {

    private static final ConfigurationDetails LAYOUT = ConfigurationDetails.of(4.2, 38.0);

    private final InstallRegister register;
    private final Sites sites;

    Installs(InstallRegister register, Sites sites) {
        this.register = register;
        this.sites = sites;
    }

    /** An install with one pump, on a site of its own, at work since a day. */
    public InstallId commissioned(LocalDate on) {
        return commissioned(sites.named("Hill block"), on);
    }

    /** An install with one pump at work since a day. */
    public InstallId commissioned(SiteId site, LocalDate on) {
        return make(site, InstallDetails.commissioned("Top ram", on), baseline(on));
    }

    /** An install that has been at work since nobody knows when. */
    public InstallId ofUnknownAge(SiteId site) {
        return make(site, new InstallDetails(null, "Old ram", null, false, null), null);
    }

    /** An install that is built but not handed over. */
    public InstallId notYetCommissioned(SiteId site) {
        return make(site, new InstallDetails(null, "New ram", null, true, null), null);
    }

    private InstallId make(SiteId site, InstallDetails details, @Nullable BaselineDetails baseline) {
        return AsOffice.call(() -> register.register(
                new RegisterInstall(site, details, LAYOUT, baseline, List.of(PumpDetails.of(null, null)))));
    }

    /** 60 l/min in, 4 l/min up, 62 beats a minute. */
    public static BaselineDetails baseline(LocalDate on) {
        return new BaselineDetails(on, 60e-3 / 60, 4e-3 / 60, 62.0 / 60, null, null);
    }
}
