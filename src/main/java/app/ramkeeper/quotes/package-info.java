/** From enquiry to accepted quote and finished job: surveys, design choices, prices, quotes, hand-over, billing. */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared", "web", "identity", "audit", "catalogue", "fleet", "visits", "upkeep", "sizing"
        })
@org.jspecify.annotations.NullMarked
package app.ramkeeper.quotes;
