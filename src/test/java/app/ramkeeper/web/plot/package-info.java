@org.jspecify.annotations.NullMarked
package app.ramkeeper.web.plot;
