/**
 * The ram itself: what it delivers and how it beats.
 *
 * <p>Three ways that must not be mixed: a model's own table ({@link app.ramkeeper.sizing.ram.PerformanceTable}), a
 * published curve of efficiency by lift ratio ({@link app.ramkeeper.sizing.ram.EfficiencyCurve}), and a model of the
 * beat in time ({@link app.ramkeeper.sizing.ram.RigidCycle}, {@link app.ramkeeper.sizing.ram.ElasticCycle}). No complete
 * measured data set with beat rate was found to check the last one against; see {@code src/docs/sizing.md}.
 */
@NullMarked
package app.ramkeeper.sizing.ram;

import org.jspecify.annotations.NullMarked;
