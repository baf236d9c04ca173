/** Measures the pages of a running server against the bare SQL of their rows. */
@NullMarked
package app.ramkeeper.bench.pages;

import org.jspecify.annotations.NullMarked;
