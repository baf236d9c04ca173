/** Customers, sites, installs with their dated configurations, movable pumps and the system round them. */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared", "web", "identity", "audit", "catalogue"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.fleet;
