/** What leaves a plan: published visits, run sheets, parts, calendars, tracks. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.rounds.out;
