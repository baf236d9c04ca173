-- What was done. Rows only come; a correction is a row that supersedes. A visit has one report that supersedes nothing,
-- and a report is superseded once, so each visit has exactly one report in force.
create table visit_reports (
  id            uuid constraint pk_visit_reports primary key,
  visit_id      uuid constraint fk_visit_reports_visit references visits,
  site_id       uuid not null constraint fk_visit_reports_site references sites,
  kind          text not null constraint ck_visit_reports_kind check (kind in ('SURVEY', 'INSTALLATION', 'COMMISSIONING', 'SERVICE', 'CALL_OUT')),
  supersedes    uuid constraint uq_visit_reports_supersedes unique,
  attended_on   date not null,
  started_at    timestamptz,
  arrived_at    timestamptz,
  left_at       timestamptz,
  recorded_at   timestamptz not null,
  recorded_by   uuid not null constraint fk_visit_reports_recorded_by references people,
  outcome       text not null constraint ck_visit_reports_outcome check (outcome in ('DONE', 'PARTLY', 'COULD_NOT', 'WITHDRAWN')),
  reason        text constraint ck_visit_reports_reason check (reason in ('LOCKED_GATE', 'NO_WATER', 'REFUSED', 'WEATHER', 'PARTS', 'OTHER')),
  note          text constraint ck_visit_reports_note check (length(note) <= 10000),
  nobody_there  boolean not null default false,
  customer_name text constraint ck_visit_reports_customer_name check (length(customer_name) <= 200),
  content_hash  bytea not null constraint ck_visit_reports_content_hash check (octet_length(content_hash) = 32),
  source        text not null constraint ck_visit_reports_source check (source in ('FORM', 'PHONE', 'IMPORT', 'OWNER')),
  constraint uq_visit_reports_site unique (id, site_id),
  constraint fk_visit_reports_supersedes foreign key (supersedes, site_id) references visit_reports (id, site_id),
  constraint ck_visit_reports_supersedes check (supersedes <> id),
  constraint ck_visit_reports_times check (started_at <= arrived_at and arrived_at <= left_at and started_at <= left_at),
  constraint ck_visit_reports_could_not check (outcome <> 'COULD_NOT' or reason is not null)
);
create unique index uq_visit_reports_visit on visit_reports (visit_id) where supersedes is null;
create index ix_visit_reports_site on visit_reports (site_id, attended_on desc, id);
create index ix_visit_reports_attended on visit_reports (attended_on desc, id);
call keep_audit_of('visit_reports');
call keep_append_only('visit_reports');

-- The reports in force.
create view current_reports as
  select r.* from visit_reports r
  where r.outcome <> 'WITHDRAWN' and not exists (select 1 from visit_reports s where s.supersedes = r.id);

create table report_people (
  report_id uuid not null constraint fk_report_people_report references visit_reports,
  person_id uuid not null constraint fk_report_people_person references people,
  lead      boolean not null,
  constraint pk_report_people primary key (report_id, person_id)
);
create unique index uq_report_people_lead on report_people (report_id) where lead;
create index ix_report_people_person on report_people (person_id);
call keep_audit_of('report_people');
call keep_append_only('report_people');

create table report_works (
  id            uuid constraint pk_report_works primary key,
  report_id     uuid not null constraint fk_report_works_report references visit_reports,
  install_id    uuid not null constraint fk_report_works_install references installs,
  pump_id       uuid constraint fk_report_works_pump references pumps,
  task_kind_id  uuid not null constraint fk_report_works_task_kind references task_kinds,
  task_id       uuid,
  outcome       text not null constraint ck_report_works_outcome check (outcome in ('DONE', 'INSPECTED_GOOD', 'COULD_NOT', 'NOT_NEEDED')),
  reason        text constraint ck_report_works_reason check (reason in ('LOCKED_GATE', 'NO_WATER', 'REFUSED', 'WEATHER', 'PARTS', 'OTHER')),
  look_again_on date,
  done_by       text not null default 'US' constraint ck_report_works_done_by check (done_by in ('US', 'OWNER')),
  about         boolean not null default false,
  note          text constraint ck_report_works_note check (length(note) <= 2000)
);
create index ix_report_works_report on report_works (report_id);
create index ix_report_works_install on report_works (install_id, task_kind_id);
call keep_audit_of('report_works');
call keep_append_only('report_works');

create table instruments (
  id         uuid constraint pk_instruments primary key,
  name       text not null constraint ck_instruments_name check (length(name) between 1 and 100),
  kind       text not null constraint ck_instruments_kind check (kind in ('BUCKET', 'GAUGE', 'METER', 'WATCH', 'LEVEL', 'OTHER')),
  checked_on date,
  version    integer not null default 0,
  constraint uq_instruments_name unique (name)
);
call keep_audit_of('instruments');

create table readings (
  id                    uuid constraint pk_readings primary key,
  report_id             uuid not null constraint fk_readings_report references visit_reports,
  install_id            uuid not null constraint fk_readings_install references installs,
  pump_id               uuid constraint fk_readings_pump references pumps,
  quantity              text not null constraint ck_readings_quantity check (quantity in ('DRIVE_FLOW', 'DELIVERED_FLOW', 'WASTE_FLOW', 'BEAT_RATE',
                          'DELIVERY_PRESSURE', 'PRE_CHARGE', 'FALL', 'SOURCE_FLOW', 'WATER_TEMPERATURE')),
  place                 text not null constraint ck_readings_place check (place in ('PUMP', 'TANK', 'SOURCE')),
  value                 numeric not null,
  unit                  text not null,
  value_si              double precision not null constraint ck_readings_value_si check (value_si < 'infinity' and value_si > '-infinity'),
  bucket_litres         numeric constraint ck_readings_bucket_litres check (bucket_litres >= 0),
  bucket_seconds        numeric constraint ck_readings_bucket_seconds check (bucket_seconds > 0),
  instrument_id         uuid constraint fk_readings_instrument references instruments,
  as_read               boolean not null default false,
  comparable            boolean not null default true,
  not_comparable_reason text constraint ck_readings_not_comparable_reason check (length(not_comparable_reason) <= 500),
  constraint ck_readings_bucket check ((bucket_litres is null) = (bucket_seconds is null))
);
create index ix_readings_report on readings (report_id);
create index ix_readings_install on readings (install_id, quantity);
call keep_audit_of('readings');
call keep_append_only('readings');

create table findings (
  id         uuid constraint pk_findings primary key,
  report_id  uuid not null constraint fk_findings_report references visit_reports,
  install_id uuid constraint fk_findings_install references installs,
  symptom    text not null constraint ck_findings_symptom check (length(symptom) <= 40),
  cause      text constraint ck_findings_cause check (length(cause) <= 2000),
  action     text constraint ck_findings_action check (length(action) <= 2000)
);
create index ix_findings_report on findings (report_id);
create index ix_findings_install on findings (install_id);
call keep_audit_of('findings');
call keep_append_only('findings');

create table parts_used (
  id         uuid constraint pk_parts_used primary key,
  report_id  uuid not null constraint fk_parts_used_report references visit_reports,
  install_id uuid not null constraint fk_parts_used_install references installs,
  pump_id    uuid constraint fk_parts_used_pump references pumps,
  part_id    uuid constraint fk_parts_used_part references parts,
  part_text  text constraint ck_parts_used_part_text check (length(part_text) <= 200),
  position   text constraint ck_parts_used_position check (length(position) <= 40),
  quantity   numeric not null constraint ck_parts_used_quantity check (quantity > 0 and quantity <= 10000),
  batch      text constraint ck_parts_used_batch check (length(batch) <= 60),
  constraint ck_parts_used_part check (part_id is not null or part_text is not null)
);
create index ix_parts_used_report on parts_used (report_id);
create index ix_parts_used_install on parts_used (install_id);
create index ix_parts_used_batch on parts_used (folded(batch), part_id) where batch is not null;
call keep_audit_of('parts_used');
call keep_append_only('parts_used');

create table photos (
  id        uuid constraint pk_photos primary key,
  report_id uuid not null constraint fk_photos_report references visit_reports,
  sha256    bytea not null constraint fk_photos_file references files,
  caption   text constraint ck_photos_caption check (length(caption) <= 300),
  taken_at  timestamptz
);
create index ix_photos_report on photos (report_id);
create index ix_photos_file on photos (sha256);
call keep_audit_of('photos');
call keep_append_only('photos');

create table follow_ups (
  id             uuid constraint pk_follow_ups primary key,
  report_id      uuid not null constraint fk_follow_ups_report references visit_reports,
  site_id        uuid not null constraint fk_follow_ups_site references sites,
  text           text not null constraint ck_follow_ups_text check (length(text) between 1 and 2000),
  due_on         date,
  promised       boolean not null,
  done_on        date,
  done_report_id uuid constraint fk_follow_ups_done_report references visit_reports,
  version        integer not null default 0
);
create index ix_follow_ups_open on follow_ups (site_id) where done_on is null;
create index ix_follow_ups_report on follow_ups (report_id);
call keep_audit_of('follow_ups');
