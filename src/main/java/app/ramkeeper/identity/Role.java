package app.ramkeeper.identity;

/** What a person may do; one person can hold several. */
public enum Role {
    OFFICE,
    TECHNICIAN,
    MANAGER,
    ADMINISTRATOR;

    /** The name Spring Security knows it by. */
    public String authority() {
        return "ROLE_" + name();
    }
}
