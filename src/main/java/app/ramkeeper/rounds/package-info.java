/** The week's rounds: which visits go into the week, who drives where, in which order. */
@org.springframework.modulith.ApplicationModule(
        allowedDependencies = {"shared", "web", "identity", "audit", "catalogue", "fleet", "visits", "upkeep"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.rounds;
