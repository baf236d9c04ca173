-- One plan a week. `version` counts the changes; each is kept in week_versions.
create table week_plans (
  id                uuid constraint pk_week_plans primary key,
  monday            date not null constraint uq_week_plans_monday unique constraint ck_week_plans_monday check (extract(isodow from monday) = 1),
  version           integer not null default 0,
  published_version integer,
  published_at      timestamptz,
  published_by      uuid constraint fk_week_plans_published_by references people,
  first_published_at timestamptz,
  travel_note       text
);
call keep_audit_of('week_plans');

-- A technician's day: who rides along, and whether the optimiser must leave it alone.
create table week_rounds (
  plan_id   uuid not null constraint fk_week_rounds_plan references week_plans on delete cascade,
  person_id uuid not null constraint fk_week_rounds_person references people,
  day       date not null,
  mate_id   uuid constraint fk_week_rounds_mate references people,
  locked    boolean not null default false,
  late_at   integer constraint ck_week_rounds_late check (late_at between 0 and 1439),
  constraint pk_week_rounds primary key (plan_id, person_id, day),
  constraint ck_week_rounds_mate check (mate_id <> person_id)
);

-- What could go into the week: a visit by bundle of what is due at a site, with or without a row in visits yet. With a
-- day it stands in that round at its position. Drafts are not audited: each change is a row of week_versions, and what
-- is published is audited as visits.
create table week_stops (
  id              uuid constraint pk_week_stops primary key,
  plan_id         uuid not null constraint fk_week_stops_plan references week_plans on delete cascade,
  site_id         uuid not null constraint fk_week_stops_site references sites,
  visit_id        uuid constraint fk_week_stops_visit references visits,
  kind            text not null constraint ck_week_stops_kind check (kind in ('SURVEY', 'INSTALLATION', 'COMMISSIONING', 'SERVICE', 'CALL_OUT')),
  minutes         integer not null constraint ck_week_stops_minutes check (minutes between 5 and 1440),
  crew            integer not null default 1 constraint ck_week_stops_crew check (crew between 1 and 9),
  skills          text[] not null default '{}',
  must            boolean not null,
  fixed_on        date,
  fixed_from      time,
  not_on          date,
  -- what leaving it out costs, and what each day of waiting within the week adds, in minutes of driving
  worth           double precision not null constraint ck_week_stops_worth check (worth >= 0),
  worth_a_day     double precision not null default 0,
  why             text not null,
  due_on          date,
  added_by_hand   boolean not null default false,
  person_id       uuid constraint fk_week_stops_person references people,
  day             date,
  position        integer,
  locked          boolean not null default false,
  set_aside       text,
  excuse          text constraint ck_week_stops_excuse check (length(excuse) <= 500),
  left_out        text,
  published_on    date,
  published_from  time,
  published_to    uuid constraint fk_week_stops_published_to references people,
  changed_at      timestamptz,
  constraint ck_week_stops_placed check (num_nulls(person_id, day, position) in (0, 3)),
  constraint uq_week_stops_visit unique (plan_id, visit_id)
);
create index ix_week_stops_plan on week_stops (plan_id, person_id, day, position);
create index ix_week_stops_visit on week_stops (visit_id);

create table week_stop_tasks (
  stop_id      uuid not null constraint fk_week_stop_tasks_stop references week_stops on delete cascade,
  task_id      uuid not null constraint fk_week_stop_tasks_task references service_tasks,
  install_id   uuid not null constraint fk_week_stop_tasks_install references installs,
  task_kind_id uuid not null constraint fk_week_stop_tasks_kind references task_kinds,
  constraint pk_week_stop_tasks primary key (stop_id, task_id)
);
create index ix_week_stop_tasks_task on week_stop_tasks (task_id);

-- Each change of a plan: who, what, and how everything stood afterwards. `same_as` names the version that an undo went back to.
create table week_versions (
  plan_id     uuid not null constraint fk_week_versions_plan references week_plans,
  no          integer not null,
  at          timestamptz not null,
  by_person   uuid constraint fk_week_versions_person references people,
  what        text not null,
  same_as     integer,
  arrangement jsonb not null,
  constraint pk_week_versions primary key (plan_id, no)
);
call keep_append_only('week_versions');
