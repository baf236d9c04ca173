-- Jobs of all nodes, as db-scheduler keeps them.
create table scheduled_tasks (
  task_name            text not null,
  task_instance        text not null,
  task_data            bytea,
  execution_time       timestamptz not null,
  picked               boolean not null,
  picked_by            text,
  last_success         timestamptz,
  last_failure         timestamptz,
  consecutive_failures int,
  last_heartbeat       timestamptz,
  version              bigint not null,
  priority             smallint,
  constraint pk_scheduled_tasks primary key (task_name, task_instance)
);
create index ix_scheduled_tasks_execution on scheduled_tasks (execution_time);
create index ix_scheduled_tasks_heartbeat on scheduled_tasks (last_heartbeat);
