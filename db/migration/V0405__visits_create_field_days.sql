-- A day in the field: when somebody left, when they are due back, when they said they are.
create table field_days (
  id           uuid constraint pk_field_days primary key,
  person_id    uuid not null constraint fk_field_days_person references people,
  day          date not null,
  left_at      timestamptz not null,
  due_back_at  timestamptz not null,
  back_at      timestamptz,
  last_site_id uuid constraint fk_field_days_last_site references sites,
  note         text constraint ck_field_days_note check (length(note) <= 500),
  version      integer not null default 0,
  constraint uq_field_days_person_day unique (person_id, day),
  constraint ck_field_days_due_back check (due_back_at > left_at),
  constraint ck_field_days_back check (back_at >= left_at)
);
create index ix_field_days_out on field_days (due_back_at) where back_at is null;
call keep_audit_of('field_days');

-- Reports that arrived but could not be applied: a second one for a visit, one for a cancelled visit. Nothing is lost.
create table to_settle (
  id           uuid constraint pk_to_settle primary key,
  report_id    uuid not null constraint uq_to_settle_report unique,
  visit_id     uuid constraint fk_to_settle_visit references visits,
  site_id      uuid constraint fk_to_settle_site references sites,
  content_hash bytea not null,
  payload      jsonb not null,
  reason       text not null constraint ck_to_settle_reason check (reason in ('SECOND_REPORT', 'VISIT_CANCELLED', 'VISIT_UNKNOWN', 'SUPERSEDED_ALREADY')),
  received_at  timestamptz not null,
  received_by  uuid not null constraint fk_to_settle_received_by references people,
  settled_at   timestamptz,
  settled_by   uuid constraint fk_to_settle_settled_by references people,
  how          text constraint ck_to_settle_how check (how in ('EXTRA_VISIT', 'SUPERSEDED', 'DISMISSED')),
  settled_note text constraint ck_to_settle_note check (length(settled_note) <= 2000),
  version      integer not null default 0,
  constraint ck_to_settle_settled check ((settled_at is null) = (how is null))
);
create index ix_to_settle_open on to_settle (received_at) where settled_at is null;
call keep_audit_of('to_settle');
