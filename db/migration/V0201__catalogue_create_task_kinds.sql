create table water_classes (
  code text constraint pk_water_classes primary key,
  name text not null
);
insert into water_classes (code, name) values ('CLEAR', 'Clear'), ('PEATY', 'Peaty'), ('SILTY', 'Silty'), ('HARD', 'Hard');
call keep_audit_of('water_classes');

create table task_kinds (
  id                uuid constraint pk_task_kinds primary key,
  code              text not null constraint uq_task_kinds_code unique
                    constraint ck_task_kinds_code check (code ~ '^[A-Z][A-Z0-9_]{1,39}$'),
  name              text not null constraint ck_task_kinds_name check (length(name) between 1 and 100),
  description       text,
  -- PUMP: each pump of a battery has its own task; INSTALL: one for the whole place.
  scope             text not null default 'INSTALL' constraint ck_task_kinds_scope check (scope in ('INSTALL', 'PUMP')),
  schedule          text not null constraint ck_task_kinds_schedule check (schedule in ('INTERVAL', 'SEASON', 'EVENT')),
  interval_months   integer not null default 0 constraint ck_task_kinds_interval_months check (interval_months between 0 and 600),
  interval_days     integer not null default 0 constraint ck_task_kinds_interval_days check (interval_days between 0 and 3650),
  life              text not null default 'CALENDAR' constraint ck_task_kinds_life check (life in ('CALENDAR', 'RUNNING')),
  early_days        integer not null default 0 constraint ck_task_kinds_early_days check (early_days between 0 and 365),
  late_days         integer not null default 0 constraint ck_task_kinds_late_days check (late_days between 0 and 365),
  -- After a sleep the task falls due no sooner than so many days after waking.
  grace_days        integer not null default 0 constraint ck_task_kinds_grace_days check (grace_days between 0 and 365),
  -- A change of fall, lift, pipe or setting makes the task due within so many days; null: it does not matter to it.
  after_change_days integer constraint ck_task_kinds_after_change_days check (after_change_days between 0 and 365),
  minutes           integer not null default 0 constraint ck_task_kinds_minutes check (minutes between 0 and 1440),
  crew              integer not null default 1 constraint ck_task_kinds_crew check (crew between 1 and 9),
  season_month      integer constraint ck_task_kinds_season_month check (season_month between 1 and 12),
  season_day        integer constraint ck_task_kinds_season_day check (season_day between 1 and 31),
  -- How much a day of lateness weighs when the week is planned.
  weight            numeric not null default 1 constraint ck_task_kinds_weight check (weight between 0 and 100),
  -- Only where people drink the water.
  drinking_water    boolean not null default false,
  -- A valve rubber: what the manager's first list is about.
  watched           boolean not null default false,
  withdrawn_on      date,
  version           integer not null default 0,
  constraint ck_task_kinds_season check ((schedule = 'SEASON') = (season_month is not null and season_day is not null)),
  constraint ck_task_kinds_interval check (schedule <> 'INTERVAL' or interval_months + interval_days > 0),
  constraint ck_task_kinds_event check (schedule <> 'EVENT' or interval_months = 0)
);
create unique index uq_task_kinds_name on task_kinds (folded(name));
call keep_audit_of('task_kinds');

-- Doing the first does the second too: an overhaul changes the rubbers.
create table task_kind_includes (
  task_kind_id uuid not null constraint fk_task_kind_includes_task_kind references task_kinds on delete cascade,
  included_id  uuid not null constraint fk_task_kind_includes_included references task_kinds,
  constraint pk_task_kind_includes primary key (task_kind_id, included_id),
  constraint ck_task_kind_includes_other check (task_kind_id <> included_id)
);
call keep_audit_of('task_kind_includes');

create table task_kind_skills (
  task_kind_id uuid not null constraint fk_task_kind_skills_task_kind references task_kinds on delete cascade,
  skill        text not null constraint ck_task_kind_skills_skill check (length(skill) between 1 and 40),
  constraint pk_task_kind_skills primary key (task_kind_id, skill)
);
call keep_audit_of('task_kind_skills');

-- What to bring. With a position, such a part fitted there at any visit counts as the task done.
create table task_kind_parts (
  task_kind_id uuid not null constraint fk_task_kind_parts_task_kind references task_kinds on delete cascade,
  part_kind    text not null constraint ck_task_kind_parts_part_kind check (part_kind in
    ('VALVE_RUBBER', 'SEAL', 'STRAINER', 'FILTER', 'VESSEL', 'VALVE', 'FITTING', 'PIPE', 'OTHER')),
  position     text not null default '' constraint ck_task_kind_parts_position check (length(position) <= 40),
  quantity     numeric not null default 1 constraint ck_task_kind_parts_quantity check (quantity > 0),
  constraint pk_task_kind_parts primary key (task_kind_id, part_kind, position)
);
call keep_audit_of('task_kind_parts');

create table task_intervals (
  task_kind_id    uuid not null constraint fk_task_intervals_task_kind references task_kinds on delete cascade,
  model_id        uuid not null constraint fk_task_intervals_model references pump_models on delete cascade,
  interval_months integer not null default 0 constraint ck_task_intervals_months check (interval_months between 0 and 600),
  interval_days   integer not null default 0 constraint ck_task_intervals_days check (interval_days between 0 and 3650),
  constraint pk_task_intervals primary key (task_kind_id, model_id),
  constraint ck_task_intervals_interval check (interval_months + interval_days > 0)
);
call keep_audit_of('task_intervals');

create table water_factors (
  task_kind_id uuid not null constraint fk_water_factors_task_kind references task_kinds on delete cascade,
  water_class  text not null constraint fk_water_factors_water_class references water_classes,
  factor       numeric not null constraint ck_water_factors_factor check (factor between 0.1 and 5),
  constraint pk_water_factors primary key (task_kind_id, water_class)
);
call keep_audit_of('water_factors');
