/** Pages of the plan: what is planned, planning a visit, answers of customers. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.visits.plan;
