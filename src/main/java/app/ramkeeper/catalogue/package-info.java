/** Pump models with their performance, parts, kinds of service task and their intervals. */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared", "web", "identity", "audit"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.catalogue;
