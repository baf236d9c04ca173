/** Ramkeeper: one application; each direct sub-package is a feature with declared dependencies. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper;
