-- An accepted quote is a job, once: its key is the quote's.
create table jobs (
  id                  uuid constraint pk_jobs primary key constraint fk_jobs_quote references quotes,
  revision            integer not null,
  at                  timestamptz not null,
  customer_id         uuid not null constraint fk_jobs_customer references customers,
  site_id             uuid not null constraint fk_jobs_site references sites,
  install_id          uuid constraint fk_jobs_install references installs,
  installation_visit  uuid not null constraint fk_jobs_installation references visits,
  commissioning_visit uuid constraint fk_jobs_commissioning references visits,
  ended_on            date,
  version             integer not null default 0
);
create index ix_jobs_site on jobs (site_id);
create index ix_jobs_install on jobs (install_id);
call keep_audit_of('jobs');

create table job_phases (
  id            uuid constraint pk_job_phases primary key,
  job_id        uuid not null constraint fk_job_phases_job references jobs,
  position      integer not null,
  kind          text not null constraint ck_job_phases_kind check (kind in ('DIG', 'LAY', 'PLINTH', 'CURE', 'FIT', 'COMMISSION', 'OTHER')),
  name          text not null constraint ck_job_phases_name check (length(name) between 1 and 120),
  from_date     date,
  until_date    date,
  plant         text constraint ck_job_phases_plant check (length(plant) <= 300),
  subcontractor text constraint ck_job_phases_subcontractor check (length(subcontractor) <= 200),
  held_since    date,
  held_because  text constraint ck_job_phases_held_because check (length(held_because) between 1 and 300),
  done_on       date,
  note          text constraint ck_job_phases_note check (length(note) <= 2000),
  version       integer not null default 0,
  constraint ck_job_phases_dates check (until_date >= from_date),
  constraint ck_job_phases_held check ((held_since is null) = (held_because is null)),
  constraint uq_job_phases_position unique (job_id, position)
);
create index ix_job_phases_open on job_phases (from_date) where done_on is null;
call keep_audit_of('job_phases');

create table phase_people (
  phase_id  uuid not null constraint fk_phase_people_phase references job_phases,
  person_id uuid not null constraint fk_phase_people_person references people,
  constraint pk_phase_people primary key (phase_id, person_id)
);
call keep_audit_of('phase_people');

-- Insurance, licences and the like of those who work on the job.
create table job_certificates (
  id         uuid constraint pk_job_certificates primary key,
  job_id     uuid not null constraint fk_job_certificates_job references jobs,
  holder     text not null constraint ck_job_certificates_holder check (length(holder) between 1 and 160),
  what       text not null constraint ck_job_certificates_what check (length(what) between 1 and 160),
  number     text constraint ck_job_certificates_number check (length(number) <= 80),
  expires_on date
);
create index ix_job_certificates_job on job_certificates (job_id);
call keep_audit_of('job_certificates');

create table job_variations (
  id          uuid constraint pk_job_variations primary key,
  job_id      uuid not null constraint fk_job_variations_job references jobs,
  number      integer not null,
  text        text not null constraint ck_job_variations_text check (length(text) between 1 and 1000),
  -- Less than nothing where something falls away.
  net         numeric(12, 2) not null,
  cost        numeric(12, 2),
  tax_name    text not null,
  tax_percent numeric(6, 3) not null,
  made_at     timestamptz not null,
  made_by     text not null,
  accepted    boolean,
  decided_at  timestamptz,
  decided_by  text constraint ck_job_variations_decided_by check (length(decided_by) between 1 and 160),
  decided_how text constraint ck_job_variations_how check (decided_how in ('PHONE', 'TEXT', 'PAPER')),
  constraint uq_job_variations_number unique (job_id, number),
  constraint ck_job_variations_decided check ((accepted is null) = (decided_at is null)
    and (accepted is null) = (decided_by is null) and (accepted is null) = (decided_how is null))
);
call keep_audit_of('job_variations');

create table billing_exports (
  id      uuid constraint pk_billing_exports primary key,
  at      timestamptz not null,
  by_whom text not null,
  items   integer not null constraint ck_billing_exports_items check (items > 0)
);
call keep_audit_of('billing_exports');

-- One line for the books: it leaves once, and then never changes.
create table billing_items (
  id             uuid constraint pk_billing_items primary key,
  reference      text not null constraint uq_billing_items_reference unique,
  kind           text not null constraint ck_billing_items_kind check (kind in ('DEPOSIT', 'STAGE', 'FINAL', 'VARIATION', 'VISIT')),
  job_id         uuid constraint fk_billing_items_job references jobs,
  variation_id   uuid constraint fk_billing_items_variation references job_variations constraint uq_billing_items_variation unique,
  -- The first report of the visit; a correction does not make it another visit.
  report_id      uuid constraint fk_billing_items_report references visit_reports constraint uq_billing_items_report unique,
  customer_id    uuid constraint fk_billing_items_customer references customers,
  text           text not null constraint ck_billing_items_text check (length(text) between 1 and 1000),
  currency       text not null,
  net            numeric(14, 2) not null,
  tax_name       text not null,
  tax_percent    numeric(6, 3) not null,
  tax            numeric(14, 2) not null,
  total          numeric(14, 2) not null,
  -- The day from which it may be invoiced; absent while the work is not done.
  ready_on       date,
  -- A visit that is not charged, and why.
  waived_because text constraint ck_billing_items_waived check (length(waived_because) between 1 and 300),
  export_id      uuid constraint fk_billing_items_export references billing_exports,
  constraint ck_billing_items_total check (total = net + tax),
  constraint ck_billing_items_of check ((kind = 'VISIT') = (report_id is not null) and (kind = 'VISIT') = (job_id is null)
    and (kind = 'VARIATION') = (variation_id is not null)),
  constraint ck_billing_items_exported check (export_id is null or (ready_on is not null and waived_because is null and customer_id is not null))
);
create index ix_billing_items_open on billing_items (ready_on) where export_id is null and waived_because is null;
create index ix_billing_items_job on billing_items (job_id);
create index ix_billing_items_export on billing_items (export_id);
call keep_audit_of('billing_items');

-- The report that a chain of corrections began with.
create function first_report(last uuid) returns uuid language sql stable as $$
  with recursive chain as (
    select id, supersedes from visit_reports where id = last
    union all select r.id, r.supersedes from visit_reports r join chain c on r.id = c.supersedes)
  select id from chain where supersedes is null
$$;

create function keep_exported() returns trigger language plpgsql as $$
begin
  if old.export_id is not null then
    raise exception 'A line that went to the books is never changed.' using errcode = 'restrict_violation';
  end if;
  return coalesce(new, old);
end $$;
create trigger tr_exported before update or delete on billing_items for each row execute function keep_exported();
