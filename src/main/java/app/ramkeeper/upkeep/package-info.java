/** Service intervals, what was last done, due dates, and the lists of what is due and overdue. */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared", "web", "identity", "audit", "catalogue", "fleet", "visits"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.upkeep;
