@org.jspecify.annotations.NullMarked
package app.ramkeeper.visits.fieldday;
