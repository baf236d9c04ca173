/** Forms whose fields are not known beforehand: one per install, task and reading. What was typed is never lost. */
@NullMarked
package app.ramkeeper.visits.form;

import org.jspecify.annotations.NullMarked;
