create table pump_models (
  id                   uuid constraint pk_pump_models primary key,
  name                 text not null constraint ck_pump_models_name check (length(name) between 1 and 100),
  drive_bore_mm        numeric constraint ck_pump_models_drive_bore check (drive_bore_mm > 0),
  fall_min_m           numeric constraint ck_pump_models_fall_min check (fall_min_m > 0),
  fall_max_m           numeric,
  lift_max_m           numeric constraint ck_pump_models_lift_max check (lift_max_m > 0),
  drive_flow_min_l_min numeric constraint ck_pump_models_drive_flow_min check (drive_flow_min_l_min > 0),
  drive_flow_max_l_min numeric,
  max_pressure_bar     numeric constraint ck_pump_models_max_pressure check (max_pressure_bar > 0),
  mass_kg              numeric constraint ck_pump_models_mass check (mass_kg > 0),
  vessel_kind          text not null default 'BLADDER' constraint ck_pump_models_vessel_kind check (vessel_kind in ('BLADDER', 'AIR_CHAMBER', 'NONE')),
  snifter              boolean not null default false,
  delivery_valves      integer not null default 1 constraint ck_pump_models_delivery_valves check (delivery_valves between 1 and 99),
  waste_valves         integer not null default 1 constraint ck_pump_models_waste_valves check (waste_valves between 1 and 99),
  notes                text,
  withdrawn_on         date,
  version              integer not null default 0,
  constraint ck_pump_models_fall check (fall_max_m >= fall_min_m),
  constraint ck_pump_models_drive_flow check (drive_flow_max_l_min >= drive_flow_min_l_min)
);
create unique index uq_pump_models_name on pump_models (folded(name));
call keep_audit_of('pump_models');

create table pump_model_performance (
  model_id         uuid not null constraint fk_pump_model_performance_model references pump_models on delete cascade,
  fall_m           numeric not null constraint ck_pump_model_performance_fall check (fall_m > 0),
  lift_m           numeric not null,
  drive_flow_l_min numeric not null constraint ck_pump_model_performance_drive_flow check (drive_flow_l_min > 0),
  delivered_l_min  numeric not null constraint ck_pump_model_performance_delivered check (delivered_l_min >= 0),
  constraint ck_pump_model_performance_lift check (lift_m > fall_m),
  -- No ram lifts more than the falling water pays for.
  constraint ck_pump_model_performance_energy check (delivered_l_min * lift_m <= drive_flow_l_min * fall_m),
  constraint pk_pump_model_performance primary key (model_id, fall_m, lift_m, drive_flow_l_min)
);
call keep_audit_of('pump_model_performance');

create table parts (
  id                 uuid constraint pk_parts primary key,
  number             text not null constraint ck_parts_number check (length(number) between 1 and 60),
  name               text not null constraint ck_parts_name check (length(name) between 1 and 120),
  unit               text not null default 'piece' constraint ck_parts_unit check (length(unit) between 1 and 20),
  kind               text not null constraint ck_parts_kind check (kind in
    ('VALVE_RUBBER', 'SEAL', 'STRAINER', 'FILTER', 'VESSEL', 'VALVE', 'FITTING', 'PIPE', 'OTHER')),
  drinking_water_fit boolean not null default false,
  withdrawn_on       date,
  version            integer not null default 0
);
create unique index uq_parts_number on parts (folded(number));
call keep_audit_of('parts');

-- Which part goes where in a model, and how many.
create table pump_model_parts (
  model_id uuid not null constraint fk_pump_model_parts_model references pump_models on delete cascade,
  part_id  uuid not null constraint fk_pump_model_parts_part references parts,
  position text not null constraint ck_pump_model_parts_position check (length(position) between 1 and 40),
  quantity numeric not null constraint ck_pump_model_parts_quantity check (quantity > 0),
  constraint pk_pump_model_parts primary key (model_id, part_id, position)
);
create index ix_pump_model_parts_part on pump_model_parts (part_id);
call keep_audit_of('pump_model_parts');
