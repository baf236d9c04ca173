/** Whole-application runs in the system's Chromium: the main job by signed-in roles, accessibility of every page. */
@org.jspecify.annotations.NullMarked
package app.ramkeeper.browser;
