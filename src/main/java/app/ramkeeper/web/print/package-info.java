/** Papers: PDF made from templates. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.web.print;
