-- One kind of task at one install, or at one pump of it. Dates are stored; how it stands is worked out against today.
create table service_tasks (
  id                     uuid constraint pk_service_tasks primary key,
  install_id             uuid not null constraint fk_service_tasks_install references installs on delete cascade,
  pump_id                uuid constraint fk_service_tasks_pump references pumps,
  task_kind_id           uuid not null constraint fk_service_tasks_task_kind references task_kinds,
  done_by                text not null default 'US' constraint ck_service_tasks_done_by check (done_by in ('US', 'OWNER', 'DECLINED')),
  decided_on             date,
  decided_by             uuid constraint fk_service_tasks_decided_by references people,
  -- agreed for this install; counts in place of the kind's
  interval_months        integer constraint ck_service_tasks_interval_months check (interval_months between 0 and 600),
  interval_days          integer constraint ck_service_tasks_interval_days check (interval_days between 0 and 3650),
  -- a last day that somebody stated, without a report
  stated_on              date,
  stated_about           boolean not null default false,
  -- what reports and statement together give
  last_done_on           date,
  last_done_as           text not null default 'NEVER' constraint ck_service_tasks_last_done_as check (last_done_as in ('KNOWN', 'ABOUT', 'UNKNOWN', 'NEVER')),
  last_report_id         uuid constraint fk_service_tasks_last_report references visit_reports,
  counting_from          date,
  look_again_on          date,
  looked_on              date,
  brought_forward_to     date,
  brought_forward_since  date,
  brought_forward_reason text constraint ck_service_tasks_brought_forward_reason check (length(brought_forward_reason) <= 500),
  due_on                 date,
  window_from            date,
  window_until           date,
  asleep_since           date,
  wakes_on               date,
  waiting                text not null default 'OURS' constraint ck_service_tasks_waiting check (waiting in ('OURS', 'CANNOT_REACH', 'REFUSED', 'PARTS')),
  waiting_since          date,
  waiting_note           text constraint ck_service_tasks_waiting_note check (length(waiting_note) <= 2000),
  -- the report that gave the reason; null where the office set it
  waiting_report_id      uuid constraint fk_service_tasks_waiting_report references visit_reports,
  -- the install is retired, or the pump gone
  ended_on               date,
  version                integer not null default 0,
  -- deferred, since two pumps of a battery may change places in one step
  constraint uq_service_tasks_place unique nulls not distinct (install_id, pump_id, task_kind_id) deferrable initially deferred,
  constraint ck_service_tasks_interval check ((interval_months is null) = (interval_days is null) and interval_months + interval_days > 0),
  constraint ck_service_tasks_last_done check ((last_done_on is not null) = (last_done_as in ('KNOWN', 'ABOUT'))),
  constraint ck_service_tasks_look check ((look_again_on is null) = (looked_on is null)),
  constraint ck_service_tasks_forward check (num_nulls(brought_forward_to, brought_forward_since, brought_forward_reason) in (0, 3)),
  constraint ck_service_tasks_window check (num_nulls(due_on, window_from, window_until) in (0, 3) and window_from <= due_on and due_on <= window_until),
  constraint ck_service_tasks_wakes check (wakes_on is null or asleep_since is not null)
);
-- The lists: ours, at work, with a date; over all kinds and by kind. What they filter by rides along in the index.
create index ix_service_tasks_due on service_tasks (due_on, id) include (install_id, task_kind_id, window_from, window_until, asleep_since, wakes_on, waiting)
  where ended_on is null and done_by = 'US' and due_on is not null;
create index ix_service_tasks_kind_due on service_tasks (task_kind_id, due_on, id) include (install_id, window_from, window_until, asleep_since, wakes_on, waiting)
  where ended_on is null and done_by = 'US' and due_on is not null;
create index ix_service_tasks_unknown on service_tasks (task_kind_id, id) where ended_on is null and done_by = 'US' and due_on is null and last_done_as = 'UNKNOWN';
create index ix_service_tasks_not_ours on service_tasks (done_by, due_on, id) where ended_on is null and done_by <> 'US';
create index ix_service_tasks_asleep on service_tasks (due_on, id) where ended_on is null and asleep_since is not null;
create index ix_service_tasks_last on service_tasks (last_done_on, id) where ended_on is null;
create index ix_service_tasks_kind on service_tasks (task_kind_id, id);
create index ix_service_tasks_pump on service_tasks (pump_id) where pump_id is not null;
call keep_audit_of('service_tasks');

-- What a pump went through elsewhere counts too.
create index ix_report_works_pump on report_works (pump_id) where pump_id is not null;
create index ix_parts_used_pump on parts_used (pump_id) where pump_id is not null;
