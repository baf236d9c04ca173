package app.ramkeeper.identity;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.security.access.prepost.PreAuthorize;

/** Allows every role: what all pages and the records of a visit need. */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
@PreAuthorize("hasAnyRole('OFFICE', 'TECHNICIAN', 'MANAGER', 'ADMINISTRATOR')")
public @interface ForStaff {}
