/** Who changed what: every write of a transaction leaves old and new values in the same transaction. */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.audit;
