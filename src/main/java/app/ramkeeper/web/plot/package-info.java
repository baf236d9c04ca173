/** Plain SVG plots: the geometry is made here, drawn by the template fragment {@code fragments/plot}, so they also print. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.web.plot;
