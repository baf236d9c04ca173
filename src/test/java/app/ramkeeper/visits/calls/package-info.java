@NullMarked
package app.ramkeeper.visits.calls;

import org.jspecify.annotations.NullMarked;
