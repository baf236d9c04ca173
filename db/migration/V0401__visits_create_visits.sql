-- The plan: one attendance at a site. It changes; what was done is a report.
create table visits (
  id               uuid constraint pk_visits primary key,
  site_id          uuid not null constraint fk_visits_site references sites,
  kind             text not null constraint ck_visits_kind check (kind in ('SURVEY', 'INSTALLATION', 'COMMISSIONING', 'SERVICE', 'CALL_OUT')),
  planned_on       date,
  planned_from     time,
  minutes          integer not null default 60 constraint ck_visits_minutes check (minutes between 5 and 1440),
  answer           text not null default 'NONE' constraint ck_visits_answer check (answer in ('NONE', 'TOLD', 'CONFIRMED', 'ASKED_TO_MOVE', 'NO_ANSWER')),
  office_must_ring boolean not null default false,
  note             text constraint ck_visits_note check (length(note) <= 10000),
  state            text not null default 'PLANNED' constraint ck_visits_state check (state in ('PLANNED', 'DONE', 'COULD_NOT', 'CANCELLED')),
  cancelled_reason text constraint ck_visits_cancelled_reason check (length(cancelled_reason) <= 1000),
  version          integer not null default 0,
  constraint ck_visits_time check (planned_from is null or planned_on is not null),
  constraint ck_visits_cancelled check ((state = 'CANCELLED') = (cancelled_reason is not null))
);
create index ix_visits_site on visits (site_id, planned_on desc);
create index ix_visits_planned on visits (planned_on, id) where state = 'PLANNED';
create index ix_visits_listed on visits (planned_on, id);
call keep_audit_of('visits');

create table visit_people (
  visit_id  uuid not null constraint fk_visit_people_visit references visits,
  person_id uuid not null constraint fk_visit_people_person references people,
  lead      boolean not null,
  -- kept by the trigger below: when this person is taken; empty without a time of day
  slot      tsrange,
  constraint pk_visit_people primary key (visit_id, person_id),
  constraint ex_visit_people_slot exclude using gist (person_id with =, slot with &&)
);
create unique index uq_visit_people_lead on visit_people (visit_id) where lead;
create index ix_visit_people_person on visit_people (person_id, visit_id);
call keep_audit_of('visit_people');

create function visit_slot(visit visits) returns tsrange language sql immutable as $$
  select case when visit.state = 'PLANNED' and visit.planned_from is not null
    then tsrange(visit.planned_on + visit.planned_from, visit.planned_on + visit.planned_from + make_interval(mins => visit.minutes)) end
$$;
create function take_visit_slot() returns trigger language plpgsql as $$
begin
  new.slot := (select visit_slot(v) from visits v where v.id = new.visit_id);
  return new;
end $$;
create trigger tr_slot before insert on visit_people for each row execute function take_visit_slot();
create function move_visit_slots() returns trigger language plpgsql as $$
begin
  update visit_people set slot = visit_slot(new) where visit_id = new.id and slot is distinct from visit_slot(new);
  return null;
end $$;
create trigger tr_slots after update of planned_on, planned_from, minutes, state on visits
  for each row execute function move_visit_slots();

-- task_id names a service task of the module above; no key reaches up.
create table visit_tasks (
  visit_id     uuid not null constraint fk_visit_tasks_visit references visits,
  task_id      uuid not null,
  install_id   uuid not null constraint fk_visit_tasks_install references installs,
  task_kind_id uuid not null constraint fk_visit_tasks_task_kind references task_kinds,
  constraint pk_visit_tasks primary key (visit_id, task_id)
);
create index ix_visit_tasks_task on visit_tasks (task_id);
call keep_audit_of('visit_tasks');

-- Each try to reach the customer about a visit.
create table visit_attempts (
  id        uuid constraint pk_visit_attempts primary key,
  visit_id  uuid not null constraint fk_visit_attempts_visit references visits,
  at        timestamptz not null,
  by_person uuid not null constraint fk_visit_attempts_person references people,
  how       text not null constraint ck_visit_attempts_how check (how in ('PHONE', 'MESSAGE', 'MAIL', 'IN_PERSON')),
  outcome   text not null constraint ck_visit_attempts_outcome check (outcome in ('TOLD', 'CONFIRMED', 'ASKED_TO_MOVE', 'NO_ANSWER')),
  note      text constraint ck_visit_attempts_note check (length(note) <= 2000)
);
create index ix_visit_attempts_visit on visit_attempts (visit_id, at);
call keep_audit_of('visit_attempts');
call keep_append_only('visit_attempts');
