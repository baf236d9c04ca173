-- Who of the office said whose delay it is; null where a report did.
alter table service_tasks add waiting_by uuid constraint fk_service_tasks_waiting_by references people;
