-- Who changed what, written by the database itself in the same transaction as the change,
-- so that no writing route, import or job can forget it.
create table audit_entries (
  id          bigint generated always as identity constraint pk_audit_entries primary key,
  at          timestamptz not null default clock_timestamp(),
  transaction bigint not null default txid_current(),
  actor       text not null,
  source      text not null,
  table_name  text not null,
  row_id      text not null,
  operation   text not null constraint ck_audit_entries_operation check (operation in ('insert', 'update', 'delete')),
  old_values  jsonb,
  new_values  jsonb
);
create index ix_audit_entries_row on audit_entries (table_name, row_id, id);
create index ix_audit_entries_at on audit_entries (at);

-- Arguments of the trigger: columns whose values are secrets; the entry says that they changed, not to what.
create function write_audit_entry() returns trigger language plpgsql security definer set search_path = public, pg_temp as $$
declare
  before jsonb := case when tg_op <> 'INSERT' then to_jsonb(old) end;
  after  jsonb := case when tg_op <> 'DELETE' then to_jsonb(new) end;
  key    text  := coalesce(after ->> 'id', before ->> 'id', '');
  secret text;
begin
  foreach secret in array coalesce(tg_argv, '{}') loop
    if after ->> secret is not null then
      after := jsonb_set(after, array[secret],
        case when before -> secret is distinct from after -> secret then '"(secret, new)"'::jsonb else '"(secret)"'::jsonb end);
    end if;
    if before ->> secret is not null then before := jsonb_set(before, array[secret], '"(secret)"'); end if;
  end loop;
  if key = '' then
    key := (select string_agg(value, '/' order by name) from jsonb_each_text(coalesce(after, before)) as t(name, value)
            where name like '%\_id' or name in ('code', 'name'));
  end if;
  if tg_op = 'UPDATE' then
    select jsonb_object_agg(name, value) into before from jsonb_each(before) as b(name, value)
      where name <> 'version' and value is distinct from after -> name;
    if before is null then return null; end if;
    select jsonb_object_agg(name, after -> name) into after from jsonb_object_keys(before) as k(name);
  end if;
  insert into audit_entries (actor, source, table_name, row_id, operation, old_values, new_values)
  values (coalesce(nullif(current_setting('ramkeeper.actor', true), ''), session_user),
          coalesce(nullif(current_setting('ramkeeper.source', true), ''), 'database'),
          tg_table_name, coalesce(key, ''), lower(tg_op), before, after);
  return null;
end $$;

-- Every feature calls this for each of its tables: call keep_audit_of('sites') or call keep_audit_of('accounts', 'password_hash').
create procedure keep_audit_of(audited regclass, variadic secrets text[] default '{}') language plpgsql as $$
begin
  execute format('create trigger tr_audit after insert or update or delete on %s for each row execute function write_audit_entry(%s)',
    audited, (select string_agg(quote_literal(s), ', ') from unnest(secrets) as s));
end $$;

-- Tables that only ever grow.
create function refuse_change() returns trigger language plpgsql as $$
begin
  if tg_table_name = 'audit_entries' and tg_op = 'UPDATE' and current_setting('ramkeeper.scrubbing', true) = 'yes' then
    return new;
  end if;
  raise exception 'Rows of % are never changed or removed.', tg_table_name using errcode = 'restrict_violation';
end $$;

create procedure keep_append_only(guarded regclass) language plpgsql as $$
begin
  execute format('create trigger tr_append_only before update or delete on %s for each row execute function refuse_change()', guarded);
  execute format('create trigger tr_no_truncate before truncate on %s for each statement execute function refuse_change()', guarded);
end $$;

call keep_append_only('audit_entries');
