/** The field without a signal: what the phone takes along, what it sends home, and the pages it draws itself. */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared", "web", "identity", "audit", "catalogue", "fleet", "visits", "upkeep", "sizing"
        })
@org.jspecify.annotations.NullMarked
package app.ramkeeper.field;
