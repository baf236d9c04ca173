/** Planned visits, reports of done ones with readings, findings and parts, calls, and the stock ledger. */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared", "web", "identity", "audit", "catalogue", "fleet"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.visits;
