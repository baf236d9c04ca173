package app.ramkeeper.identity;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.security.access.prepost.PreAuthorize;

/** Allows every fully signed-in person: the first page, help, the own account. */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
@PreAuthorize("hasAnyRole('TECHNICIAN', 'OFFICE', 'MANAGER', 'ADMINISTRATOR')")
public @interface ForAll {}
