package app.ramkeeper.identity;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.security.access.prepost.PreAuthorize;

/** Allows all who keep the register: office, manager, and the administrator who imports it. */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
@PreAuthorize("hasAnyRole('OFFICE', 'MANAGER', 'ADMINISTRATOR')")
public @interface ForRegister {}
