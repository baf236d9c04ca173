/** Page layout, form and error helpers, paging, table downloads and the one error advice. */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.web;
