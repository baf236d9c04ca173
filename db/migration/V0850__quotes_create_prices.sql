-- What a quote can hold, with what it costs from when to when. A quote copies the price it was made with.
create table priced_things (
  id                 uuid constraint pk_priced_things primary key,
  code               text not null constraint ck_priced_things_code check (length(code) between 1 and 40),
  kind               text not null constraint ck_priced_things_kind check (kind in
    ('PUMP', 'FITTINGS_KIT', 'PIPE', 'VESSEL', 'VALVE', 'STRAINER', 'TANK', 'LABOUR', 'TRAVEL', 'TAX', 'OTHER')),
  name               text not null constraint ck_priced_things_name check (length(name) between 1 and 120),
  unit               text not null constraint ck_priced_things_unit check (length(unit) between 1 and 20),
  model_id           uuid constraint fk_priced_things_model references pump_models,
  pipe_use           text constraint ck_priced_things_pipe_use check (pipe_use in ('DRIVE', 'DELIVERY', 'BOTH')),
  material           text constraint ck_priced_things_material check (material in ('PE100', 'GALVANISED_STEEL', 'PVC_U')),
  series             text constraint ck_priced_things_series check (length(series) between 1 and 40),
  outside_mm         numeric constraint ck_priced_things_outside check (outside_mm > 0),
  wall_mm            numeric constraint ck_priced_things_wall check (wall_mm > 0),
  class_bar          numeric constraint ck_priced_things_class check (class_bar > 0),
  -- Stock length or coil: a quote counts whole ones where the office wants it so.
  sold_in_m          numeric constraint ck_priced_things_sold_in check (sold_in_m > 0),
  litres             numeric constraint ck_priced_things_litres check (litres > 0),
  rating_bar         numeric constraint ck_priced_things_rating check (rating_bar > 0),
  drinking_water_fit boolean not null default false,
  withdrawn_on       date,
  version            integer not null default 0,
  constraint ck_priced_things_bore check (2 * wall_mm < outside_mm),
  constraint ck_priced_things_model check ((kind in ('PUMP', 'FITTINGS_KIT')) = (model_id is not null)),
  constraint ck_priced_things_pipe check (kind <> 'PIPE' or (pipe_use is not null and material is not null
    and series is not null and outside_mm is not null and wall_mm is not null and class_bar is not null)),
  constraint ck_priced_things_vessel check (kind <> 'VESSEL' or (litres is not null and rating_bar is not null)),
  constraint ck_priced_things_tank check (kind <> 'TANK' or litres is not null)
);
create unique index uq_priced_things_code on priced_things (folded(code));
create unique index uq_priced_things_model on priced_things (kind, model_id) where model_id is not null;
call keep_audit_of('priced_things');

create table prices (
  id         uuid constraint pk_prices primary key,
  thing_id   uuid not null constraint fk_prices_thing references priced_things,
  from_date  date not null,
  until_date date,
  -- What the customer pays without tax; of a TAX its rate in per cent.
  price      numeric(12, 4) not null constraint ck_prices_price check (price >= 0),
  cost       numeric(12, 4) constraint ck_prices_cost check (cost >= 0),
  constraint ck_prices_dates check (until_date >= from_date),
  constraint ex_prices_overlap exclude using gist (thing_id with =, daterange(from_date, until_date, '[]') with &&)
);
call keep_audit_of('prices');

-- How quotes are reckoned; one row.
create table quote_settings (
  one              boolean not null default true constraint pk_quote_settings primary key constraint ck_quote_settings_one check (one),
  currency         text not null default '$' constraint ck_quote_settings_currency check (length(currency) between 1 and 5),
  tax_rounding     text not null default 'LINE' constraint ck_quote_settings_rounding check (tax_rounding in ('LINE', 'TOTAL')),
  off_cut_percent  numeric(5, 2) not null default 5 constraint ck_quote_settings_off_cut check (off_cut_percent between 0 and 50),
  valid_days       integer not null default 60 constraint ck_quote_settings_valid check (valid_days between 1 and 730),
  deposit_percent  numeric(5, 2) not null default 30 constraint ck_quote_settings_deposit check (deposit_percent between 0 and 100),
  stage_percent    numeric(5, 2) not null default 40 constraint ck_quote_settings_stage check (stage_percent between 0 and 100),
  labour_days      numeric(5, 2) not null default 3 constraint ck_quote_settings_labour check (labour_days between 0 and 100),
  metres_a_day     numeric(7, 2) not null default 150 constraint ck_quote_settings_metres check (metres_a_day > 0),
  number_prefix    text not null default 'Q' constraint ck_quote_settings_prefix check (number_prefix ~ '^[A-Za-z0-9-]{0,8}$'),
  -- Visits done from this day on wait for a word whether they are charged.
  bill_from        date not null default current_date,
  version          integer not null default 0,
  constraint ck_quote_settings_stages check (deposit_percent + stage_percent <= 100)
);
insert into quote_settings default values;
call keep_audit_of('quote_settings');
