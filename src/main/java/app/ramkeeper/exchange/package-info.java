/** Import and export of an office'"s */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared", "web", "identity", "audit", "catalogue", "fleet", "visits", "upkeep"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.exchange;
