-- The system round the pump, from spring box to trough.
create table system_elements (
  id         uuid constraint pk_system_elements primary key,
  install_id uuid not null constraint fk_system_elements_install references installs,
  kind       text not null constraint ck_system_elements_kind check (kind in
    ('SPRING_BOX', 'FEED_PIPE', 'DRIVE_TANK', 'CHAMBER', 'DELIVERY_LINE', 'TANK', 'OVERFLOW', 'FLOAT', 'TROUGH', 'TREATMENT')),
  name       text not null constraint ck_system_elements_name check (length(name) between 1 and 200),
  latitude   double precision constraint ck_system_elements_latitude check (latitude between -90 and 90),
  longitude  double precision constraint ck_system_elements_longitude check (longitude between -180 and 180),
  note       text constraint ck_system_elements_note check (length(note) <= 4000),
  constraint ck_system_elements_position check ((latitude is null) = (longitude is null))
);
create index ix_system_elements_install on system_elements (install_id);
call keep_audit_of('system_elements');

-- A line as it was laid: levels along its length, joints, air and drain points.
create table as_built_points (
  id         uuid constraint pk_as_built_points primary key,
  element_id uuid not null constraint fk_as_built_points_element references system_elements on delete cascade,
  seq        integer not null constraint ck_as_built_points_seq check (seq between 1 and 10000),
  kind       text not null constraint ck_as_built_points_kind check (kind in ('POINT', 'JOINT', 'AIR', 'DRAIN', 'BRANCH', 'CROSSING', 'OUTLET')),
  chainage_m double precision constraint ck_as_built_points_chainage check (chainage_m between 0 and 50000),
  level_m    double precision constraint ck_as_built_points_level check (level_m between -1000 and 6000),
  latitude   double precision constraint ck_as_built_points_latitude check (latitude between -90 and 90),
  longitude  double precision constraint ck_as_built_points_longitude check (longitude between -180 and 180),
  note       text constraint ck_as_built_points_note check (length(note) <= 1000),
  constraint uq_as_built_points_seq unique (element_id, seq),
  constraint ck_as_built_points_position check ((latitude is null) = (longitude is null))
);
call keep_audit_of('as_built_points');

create table agreements (
  id          uuid constraint pk_agreements primary key,
  customer_id uuid not null constraint fk_agreements_customer references customers,
  number      text constraint ck_agreements_number check (length(number) between 1 and 60),
  from_date   date not null,
  until_date  date,
  covers      text not null constraint ck_agreements_covers check (length(covers) between 1 and 2000),
  -- A year, without tax, in the company's currency.
  price       numeric(12, 2) constraint ck_agreements_price check (price >= 0),
  renewal_on  date,
  version     integer not null default 0,
  constraint ck_agreements_dates check (until_date > from_date),
  constraint ck_agreements_renewal check (renewal_on >= from_date)
);
create unique index uq_agreements_number on agreements (folded(number));
create index ix_agreements_customer on agreements (customer_id);
create index ix_agreements_renewal on agreements (renewal_on);
call keep_audit_of('agreements');

create table agreement_installs (
  agreement_id uuid not null constraint fk_agreement_installs_agreement references agreements on delete cascade,
  install_id   uuid not null constraint fk_agreement_installs_install references installs,
  -- The first day on which it no longer covers this install, for one that leaves before the agreement ends.
  until_date   date,
  constraint pk_agreement_installs primary key (agreement_id, install_id)
);
create index ix_agreement_installs_install on agreement_installs (install_id);
call keep_audit_of('agreement_installs');
