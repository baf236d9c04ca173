@org.jspecify.annotations.NullMarked
package app.ramkeeper.upkeep.rules;
