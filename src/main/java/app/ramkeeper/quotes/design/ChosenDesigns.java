package app.ramkeeper.quotes.design;

/** Where a quote finds the design it is made from. */
public interface ChosenDesigns {

    /**
     * The design as it was chosen.
     *
     * @throws app.ramkeeper.shared.Missing if there is none
     */
    ChosenDesign find(DesignId id);
}
