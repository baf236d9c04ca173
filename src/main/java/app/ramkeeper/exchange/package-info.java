/**
 * Import and export of an office's own register and visit history. A file is read row by row into {@code import_rows};
 * a job checks the rows, brings the good ones in through the owners' commands and can take a whole run back.
 */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared", "web", "identity", "audit", "catalogue", "fleet", "visits", "upkeep"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.exchange;
