/** Photos: checked, turned upright, made anew without position data, kept in the database by their content. */
@NullMarked
package app.ramkeeper.visits.files;

import org.jspecify.annotations.NullMarked;
