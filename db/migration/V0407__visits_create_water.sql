-- Water quality: samples with what the laboratory found, often days after the visit, and what was done for hygiene.
-- They hang on the report in force: a correction takes them over.
create table water_samples (
  id         uuid constraint pk_water_samples primary key,
  report_id  uuid not null constraint fk_water_samples_report references visit_reports,
  reference  text constraint ck_water_samples_reference check (length(reference) between 1 and 300),
  place      text constraint ck_water_samples_place check (length(place) between 1 and 300),
  taken_on   date not null,
  taken_time time,
  taken_by   text constraint ck_water_samples_taken_by check (length(taken_by) between 1 and 300),
  laboratory text constraint ck_water_samples_laboratory check (length(laboratory) between 1 and 300),
  remark     text constraint ck_water_samples_remark check (length(remark) between 1 and 2000),
  next_on    date,
  version    integer not null default 0,
  constraint ck_water_samples_next check (next_on > taken_on)
);
create index ix_water_samples_report on water_samples (report_id);
call keep_audit_of('water_samples');

-- As the laboratory words it: "< 1" and "not detected" are results.
create table water_results (
  sample_id uuid not null constraint fk_water_results_sample references water_samples on delete cascade,
  seq       integer not null constraint ck_water_results_seq check (seq between 1 and 60),
  parameter text not null constraint ck_water_results_parameter check (length(parameter) between 1 and 100),
  value     text not null constraint ck_water_results_value check (length(value) between 1 and 60),
  unit      text constraint ck_water_results_unit check (length(unit) between 1 and 30),
  constraint pk_water_results primary key (sample_id, seq)
);
call keep_audit_of('water_results');

create table hygiene_records (
  report_id       uuid constraint pk_hygiene_records primary key constraint fk_hygiene_records_report references visit_reports,
  product         text constraint ck_hygiene_records_product check (length(product) between 1 and 300),
  strength        text constraint ck_hygiene_records_strength check (length(strength) between 1 and 300),
  contact_minutes integer constraint ck_hygiene_records_contact check (contact_minutes between 0 and 100000),
  flushed         text constraint ck_hygiene_records_flushed check (length(flushed) between 1 and 300),
  isolated        boolean not null,
  -- how boots and tools were cleaned before the next catchment
  cleaned         text constraint ck_hygiene_records_cleaned check (length(cleaned) between 1 and 300),
  constraint ck_hygiene_records_isolated check (isolated or product is null)
);
call keep_audit_of('hygiene_records');
