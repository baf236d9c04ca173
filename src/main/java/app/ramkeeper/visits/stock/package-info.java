/** The stock ledger: what lies in which depot and van, with batches, and where a batch went. */
@NullMarked
package app.ramkeeper.visits.stock;

import org.jspecify.annotations.NullMarked;
