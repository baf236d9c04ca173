-- True where somebody typed how long the visit takes: a plan of the week does not make it longer by itself.
-- What stands already may have been typed; only new visits begin without.
alter table visits add column minutes_by_hand boolean not null default true;
alter table visits alter column minutes_by_hand set default false;
