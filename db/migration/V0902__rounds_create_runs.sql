-- A run of the optimiser for a week. At most one waits or works; a node that dies leaves it to another.
create table week_runs (
  id           uuid constraint pk_week_runs primary key,
  plan_id      uuid not null constraint fk_week_runs_plan references week_plans,
  kind         text not null constraint ck_week_runs_kind check (kind in ('LIGHTLY', 'SCRATCH')),
  seed         bigint not null,
  iterations   bigint not null,
  base_version integer not null,
  state        text not null constraint ck_week_runs_state check (state in ('WAITING', 'WORKING', 'DONE', 'KEPT', 'FAILED')),
  asked_by     uuid not null constraint fk_week_runs_asked_by references people,
  actor        text not null,
  asked_at     timestamptz not null,
  started_at   timestamptz,
  finished_at  timestamptz,
  stop_wanted  boolean not null default false,
  share        double precision not null default 0,
  visits_in    integer,
  drive_minutes integer,
  late_visits  integer,
  cost         double precision,
  message      text,
  -- a result that was not taken over, because the plan had been changed meanwhile
  proposal     jsonb
);
create unique index uq_week_runs_one on week_runs (plan_id) where state in ('WAITING', 'WORKING');
create index ix_week_runs_plan on week_runs (plan_id, asked_at desc);
