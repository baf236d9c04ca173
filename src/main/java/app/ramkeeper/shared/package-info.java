/** The few types all features need: kinds of failure, identifiers, measured quantities, clean text, the clock, lists read together. */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.shared;
