/** People of the company, their accounts and roles, sign-in and the security chain. */
@org.springframework.modulith.ApplicationModule(
        type = org.springframework.modulith.ApplicationModule.Type.OPEN,
        allowedDependencies = {"shared", "web"})
@org.jspecify.annotations.NullMarked
package app.ramkeeper.identity;
