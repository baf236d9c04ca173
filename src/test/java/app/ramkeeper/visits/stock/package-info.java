@NullMarked
package app.ramkeeper.visits.stock;

import org.jspecify.annotations.NullMarked;
