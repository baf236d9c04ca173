create table pumps (
  id             uuid constraint pk_pumps primary key,
  serial         text constraint ck_pumps_serial check (length(serial) between 1 and 60),
  model_id       uuid constraint fk_pumps_model references pump_models,
  made_on        date,
  ownership      text not null default 'CUSTOMER' constraint ck_pumps_ownership check (ownership in ('CUSTOMER', 'COMPANY')),
  retired_on     date,
  warranty_until date,
  notes          text constraint ck_pumps_notes check (length(notes) <= 4000),
  version        integer not null default 0,
  constraint ck_pumps_retired check (retired_on >= made_on),
  constraint ck_pumps_warranty check (warranty_until >= made_on)
);
create unique index uq_pumps_serial on pumps (folded(serial));
create index ix_pumps_model on pumps (model_id);
create index ix_pumps_search on pumps using gin (folded(serial) gin_trgm_ops);
call keep_audit_of('pumps');

-- Where a pump was from a day on to the day before until_date: fitted here, in the workshop, lent.
create table pump_fittings (
  id         uuid constraint pk_pump_fittings primary key,
  pump_id    uuid not null constraint fk_pump_fittings_pump references pumps,
  place      text not null constraint ck_pump_fittings_place check (place in ('INSTALL', 'LOAN', 'WORKSHOP', 'STORE', 'RETIRED')),
  install_id uuid constraint fk_pump_fittings_install references installs,
  -- Which place of a battery, counted from 1.
  place_no   integer constraint ck_pump_fittings_place_no check (place_no between 1 and 99),
  from_date  date,
  until_date date,
  reason     text constraint ck_pump_fittings_reason check (length(reason) <= 1000),
  constraint ck_pump_fittings_where check ((place in ('INSTALL', 'LOAN')) = (install_id is not null)),
  constraint ck_pump_fittings_battery check ((install_id is null) = (place_no is null)),
  constraint ck_pump_fittings_dates check (until_date > from_date),
  constraint ex_pump_fittings_pump exclude using gist (pump_id with =, daterange(from_date, until_date) with &&),
  constraint ex_pump_fittings_place exclude using gist (install_id with =, place_no with =, daterange(from_date, until_date) with &&)
);
create index ix_pump_fittings_install on pump_fittings (install_id);
call keep_audit_of('pump_fittings');

create table components (
  id           uuid constraint pk_components primary key,
  install_id   uuid not null constraint fk_components_install references installs,
  pump_id      uuid constraint fk_components_pump references pumps,
  position     text not null constraint ck_components_position check (position in
    ('INTAKE', 'STRAINER', 'DRIVE_PIPE', 'WASTE_VALVE', 'DELIVERY_VALVE', 'SEAL', 'SNIFTER', 'VESSEL', 'GAUGE', 'DELIVERY_PIPE', 'OTHER')),
  part_id      uuid constraint fk_components_part references parts,
  fitted_on    date,
  fitted_known boolean not null default true,
  removed_on   date,
  batch        text constraint ck_components_batch check (length(batch) <= 100),
  serial       text constraint ck_components_serial check (length(serial) <= 100),
  rating_bar   double precision constraint ck_components_rating check (rating_bar > 0 and rating_bar <= 1000),
  note         text constraint ck_components_note check (length(note) <= 1000),
  constraint ck_components_fitted check ((fitted_on is not null) = fitted_known),
  constraint ck_components_dates check (removed_on >= fitted_on)
);
create index ix_components_install on components (install_id);
create index ix_components_pump on components (pump_id);
create index ix_components_batch on components (part_id, batch);
call keep_audit_of('components');
