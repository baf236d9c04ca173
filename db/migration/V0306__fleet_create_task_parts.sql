-- Which parts a kind of task asks for at a pump that is fitted now. One place for the sum of what is to bring, to load and to buy.
create view install_task_parts as
select f.install_id, f.pump_id, k.task_kind_id, p.id as part_id, p.number, p.name, p.unit, m.quantity
from pump_fittings f
  join pumps u on u.id = f.pump_id
  join pump_model_parts m on m.model_id = u.model_id
  join parts p on p.id = m.part_id and p.withdrawn_on is null
  join task_kind_parts k on k.part_kind = p.kind and (k.position = '' or k.position = m.position)
where f.until_date is null and f.install_id is not null;
