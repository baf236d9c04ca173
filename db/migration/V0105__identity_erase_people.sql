-- A person has a right to be forgotten, in the trail of changes too. Only this function may rewrite the trail, and only
-- by blotting out words; what was done, when and to which row stays.
create function blot_out(words text[], old_actor text, new_actor text) returns bigint
  language plpgsql security definer set search_path = public, pg_temp as $$
declare
  word    text;
  quoted  text;
  inside  text;
  touched bigint := 0;
  rows    bigint;
begin
  perform set_config('ramkeeper.scrubbing', 'yes', true);
  foreach word in array words loop
    continue when word is null or word = '';
    quoted := to_json(word)::text;
    -- a short word stands inside too many others: it goes only where it is the whole value
    inside := case when length(word) >= 5 then substr(quoted, 2, length(quoted) - 2) else quoted end;
    update audit_entries set
      old_values = replace(replace(old_values::text, quoted, '"(erased)"'), inside, case when length(word) >= 5 then '(erased)' else '"(erased)"' end)::jsonb,
      new_values = replace(replace(new_values::text, quoted, '"(erased)"'), inside, case when length(word) >= 5 then '(erased)' else '"(erased)"' end)::jsonb
    where position(inside in coalesce(old_values::text, '') || coalesce(new_values::text, '')) > 0;
    get diagnostics rows = row_count;
    touched := touched + rows;
  end loop;
  update audit_entries set actor = new_actor where actor = old_actor;
  get diagnostics rows = row_count;
  perform set_config('ramkeeper.scrubbing', '', true);
  return touched + rows;
end $$;

create index ix_audit_entries_actor on audit_entries (actor, id);
