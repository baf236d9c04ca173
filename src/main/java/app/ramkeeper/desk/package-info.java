/** Each role's first page, and pages that compose several features: site sheet, history. */
@org.springframework.modulith.ApplicationModule(
        allowedDependencies = {"shared", "web", "identity", "audit", "catalogue", "fleet", "visits", "upkeep", "field"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.desk;
