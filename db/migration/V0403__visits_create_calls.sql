-- Somebody rings: no water.
create table calls (
  id               uuid constraint pk_calls primary key,
  received_at      timestamptz not null,
  taken_by         uuid not null constraint fk_calls_taken_by references people,
  site_id          uuid constraint fk_calls_site references sites,
  install_id       uuid constraint fk_calls_install references installs,
  caller           text constraint ck_calls_caller check (length(caller) <= 200),
  phone            text constraint ck_calls_phone check (length(phone) <= 60),
  place_text       text constraint ck_calls_place_text check (length(place_text) <= 300),
  symptom          text not null constraint ck_calls_symptom check (length(symptom) <= 40),
  water_hours_left numeric constraint ck_calls_water_hours_left check (water_hours_left between 0 and 10000),
  people_dry       boolean not null default false,
  stock_dry        boolean not null default false,
  advice           text constraint ck_calls_advice check (length(advice) <= 4000),
  promise          text constraint ck_calls_promise check (length(promise) <= 2000),
  promised_by      timestamptz,
  note             text constraint ck_calls_note check (length(note) <= 10000),
  visit_id         uuid constraint fk_calls_visit references visits,
  closed_at        timestamptz,
  closed_by        uuid constraint fk_calls_closed_by references people,
  closed_note      text constraint ck_calls_closed_note check (length(closed_note) <= 2000),
  version          integer not null default 0,
  constraint ck_calls_place check (site_id is not null or place_text is not null),
  constraint ck_calls_closed check (closed_at >= received_at)
);
create index ix_calls_open on calls (received_at) where closed_at is null;
create index ix_calls_received on calls (received_at desc, id);
create index ix_calls_site on calls (site_id, received_at desc);
create index ix_calls_visit on calls (visit_id);
call keep_audit_of('calls');
