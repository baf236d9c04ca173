@org.jspecify.annotations.NullMarked
package app.ramkeeper.fleet.web;
