-- Runs after each migration: when the application works as a role of its own, that role may use the tables but never
-- rewrite the audit trail. Empty placeholder: one role does both, and the table's own trigger is the guard.
do $$
declare
  app text := '${app_role}';
begin
  if app <> '' and app <> current_user then
    execute format('grant usage on schema public to %I', app);
    execute format('grant select, insert, update, delete on all tables in schema public to %I', app);
    execute format('grant usage, select on all sequences in schema public to %I', app);
    execute format('revoke update, delete, truncate on audit_entries from %I', app);
    execute format('revoke insert, update, delete on flyway_schema_history from %I', app);
  end if;
end $$;
