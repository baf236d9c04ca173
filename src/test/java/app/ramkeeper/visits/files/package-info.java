@org.jspecify.annotations.NullMarked
package app.ramkeeper.visits.files;
