/** Enquiries, and what was found and wished at the site. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.quotes.survey;
