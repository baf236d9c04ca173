package app.ramkeeper.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import app.ramkeeper.visits.PageTest;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** Whoever rings spells names by ear: sixty slips, and the right site is among the first five found. Names are invented. */
@PageTest
class MisspeltNamesTests {

    /** Owner, site, locality, serial of the pump. */
    private static final String REGISTER = """
            Wainwright & Daughters; Cloudberry Fell; Ōtūroa Valley; QX-40117
            Harriet Pemberthwaite; Skerrick Downs; Lower Mānuka Stream; QX-40125
            Te Kōwhai Ahu Trust; Pūriri Terrace; Whangaroto; QX-40133
            Bartholomew Quince; Thistlecombe; Grindle Beck; TR/2210-A
            Ngāhere Station Ltd; Tōtara Flat; Rangitukia Road; TR/2211-B
            Siobhan MacAllery; Limestone Gully; Kererū Creek; TR/2212-C
            Joachim Vandersloot; Peat Hollow; Upper Drumlin; 0077431
            Philippa Featherstowe; Rookery Bank; Saltmarsh Lane; 0077508
            Rāwiri Tamakehu; Kākāpō Ridge; Waiōhiki; 0077615
            Ebenezer Crowhurst; Wuthering Top; Blackmire; HM9-551
            Geraldine Ottershaw; Quarryman's Rest; Slatewater; HM9-562
            Lachlan Dunkeldie; Glen Fannoch; Strathmirren; HM9-573
            Yvette Beaulieu-Marsh; Chestnut Drift; Ironbark Flat; KP-0009
            Zebedee Hollins; Xanthe's Paddock; Windlestraw; KP-0010
            Māhinaarangi Whare; Hīnau Bush; Te Ōreti; KP-0011
            Tobias Wrexcombe; Larkspur Hill; Nettlebed; KP-0012
            Aroha Pouākai; Mānuka Saddle; Raupō Swamp; ZW3301
            Cuthbert Inglewick; Fennel Brae; Osprey Point; ZW3302
            Delphine Rousseaux; Barley Mow; Cobbler's Ford; ZW3303
            Montague Spurling; Heron's Reach; Tadpole Lane; ZW3304
            """;

    /** What was typed, and the site that was meant. */
    private static final String SLIPS = """
            cloudbery; Cloudberry Fell
            cloud berry fel; Cloudberry Fell
            wainright; Cloudberry Fell
            wanewright daughters; Cloudberry Fell
            oturoa; Cloudberry Fell
            qx40117; Cloudberry Fell
            skerick; Skerrick Downs
            skerrik downs; Skerrick Downs
            pemberthwate; Skerrick Downs
            harriet pemberwaite; Skerrick Downs
            lower manuka; Skerrick Downs
            te kowhai; Pūriri Terrace
            kowai ahu; Pūriri Terrace
            puriri terace; Pūriri Terrace
            purirri; Pūriri Terrace
            wangaroto; Pūriri Terrace
            thistelcombe; Thistlecombe
            thistlecoombe; Thistlecombe
            bartholemew quince; Thistlecombe
            grindel beck; Thistlecombe
            2210-A; Thistlecombe
            ngahere staton; Tōtara Flat
            nahere; Tōtara Flat
            totara flatt; Tōtara Flat
            rangitukea; Tōtara Flat
            macallary; Limestone Gully
            shioban macallery; Limestone Gully
            limston gully; Limestone Gully
            kereru creak; Limestone Gully
            vandersloat; Peat Hollow
            joachim vanderslot; Peat Hollow
            peet hollow; Peat Hollow
            0077413; Peat Hollow
            fetherstowe; Rookery Bank
            rookry bank; Rookery Bank
            phillipa featherstow; Rookery Bank
            kakapo rige; Kākāpō Ridge
            rawiri tamakehu; Kākāpō Ridge
            rawiri tamekehu; Kākāpō Ridge
            waiohiki; Kākāpō Ridge
            wutherin top; Wuthering Top
            ebenezar crowhirst; Wuthering Top
            ottershore; Quarryman's Rest
            quarymans rest; Quarryman's Rest
            slatwater; Quarryman's Rest
            dunkeldy; Glen Fannoch
            glen fannock; Glen Fannoch
            beaulieu marsh; Chestnut Drift
            bewlieu marsh; Chestnut Drift
            chesnut drift; Chestnut Drift
            zanthes paddock; Xanthe's Paddock
            zebadee holins; Xanthe's Paddock
            mahinarangi; Hīnau Bush
            hinau bush; Hīnau Bush
            wrexcoomb; Larkspur Hill
            larkspurr hil; Larkspur Hill
            pouakai; Mānuka Saddle
            raupo swomp; Mānuka Saddle
            delfine rousseau; Barley Mow
            herons reech; Heron's Reach
            """;

    @Autowired
    Fleet fleet;

    @Autowired
    SiteRegister sites;

    @Autowired
    CustomerRegister customers;

    @Autowired
    InstallRegister installs;

    @Test
    void findsTheRightSiteAmongTheFirstFive() {
        Map<String, SiteId> made = new HashMap<>();
        rows(REGISTER).forEach(row -> made.put(row.get(1), register(row)));
        List<List<String>> slips = rows(SLIPS);

        assertThat(slips).hasSize(60);
        assertThat(slips.stream()
                        .filter(slip -> !found(slip.get(0)).contains(made.get(slip.get(1))))
                        .map(slip -> slip + " found " + fleet.search(slip.get(0), 5)))
                .isEmpty();
    }

    private List<SiteId> found(String typed) {
        return fleet.search(typed, 5).stream().map(SiteMatch::id).toList();
    }

    private SiteId register(List<String> row) {
        return AsOffice.call(() -> {
            CustomerId owner = customers.register(CustomerDetails.named(row.get(0)));
            SiteDetails place = new SiteDetails(
                    null, row.get(1), row.get(2), null, null, null, null, null, null, null, null, null, false, null);
            SiteId site = sites.register(place, List.of(NewParty.of(SitePart.OWNER, owner)));
            installs.register(new RegisterInstall(
                    site,
                    InstallDetails.commissioned("Ram pump", LocalDate.of(2020, 1, 2)),
                    ConfigurationDetails.unknown(),
                    null,
                    List.of(PumpDetails.of(row.get(3), null))));
            return site;
        });
    }

    private static List<List<String>> rows(String table) {
        return table.lines().map(line -> List.of(line.split("; "))).toList();
    }
}
