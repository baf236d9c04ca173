/** The rules of due dates, in plain Java: what a task's history says, when it falls due, how it stands today. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.upkeep.rules;
