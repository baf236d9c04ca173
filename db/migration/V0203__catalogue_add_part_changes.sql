-- The task kinds that are the change of a part: they ask for one in a place, or include a kind that does.
create view part_changes as
  select k.id as task_kind_id from task_kinds k
  where exists (select from task_kind_parts n where n.position <> '' and (n.task_kind_id = k.id
    or n.task_kind_id in (select i.included_id from task_kind_includes i where i.task_kind_id = k.id)));
