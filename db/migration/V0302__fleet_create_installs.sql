-- A place in a site's system: what stands there changes, the place stays.
create table installs (
  id                  uuid constraint pk_installs primary key,
  site_id             uuid not null constraint fk_installs_site references sites,
  reference           text constraint ck_installs_reference check (length(reference) between 1 and 60),
  name                text not null constraint ck_installs_name check (length(name) between 1 and 200),
  -- No day: not commissioned yet, or, when not known, at work since before the register.
  commissioned_on     date,
  commissioning_known boolean not null default true,
  retired_on          date,
  warranty_until      date,
  version             integer not null default 0,
  constraint ck_installs_commissioning check (commissioned_on is null or commissioning_known),
  constraint ck_installs_retired check (retired_on >= commissioned_on),
  constraint ck_installs_warranty check (warranty_until >= commissioned_on)
);
create unique index uq_installs_reference on installs (folded(reference));
create index ix_installs_site on installs (site_id);
create index ix_installs_name on installs (folded(name), id);
call keep_audit_of('installs');

-- Fall, pipes, outlet and setting as they were from a day on to the day before until_date.
create table configurations (
  id                      uuid constraint pk_configurations primary key,
  install_id              uuid not null constraint fk_configurations_install references installs,
  from_date               date,
  until_date              date,
  reason                  text constraint ck_configurations_reason check (length(reason) <= 1000),
  fall_m                  double precision constraint ck_configurations_fall check (fall_m > 0 and fall_m <= 200),
  lift_m                  double precision constraint ck_configurations_lift check (lift_m > 0 and lift_m <= 1000),
  drive_pipe_material     text constraint ck_configurations_drive_pipe_material check (length(drive_pipe_material) <= 100),
  drive_pipe_bore_mm      double precision constraint ck_configurations_drive_pipe_bore check (drive_pipe_bore_mm > 0 and drive_pipe_bore_mm <= 1000),
  drive_pipe_length_m     double precision constraint ck_configurations_drive_pipe_length check (drive_pipe_length_m > 0 and drive_pipe_length_m <= 1000),
  delivery_pipe           text constraint ck_configurations_delivery_pipe check (length(delivery_pipe) <= 200),
  delivery_pipe_bore_mm   double precision constraint ck_configurations_delivery_pipe_bore check (delivery_pipe_bore_mm > 0 and delivery_pipe_bore_mm <= 1000),
  delivery_pipe_length_m  double precision constraint ck_configurations_delivery_pipe_length check (delivery_pipe_length_m > 0 and delivery_pipe_length_m <= 50000),
  valve_setting           text constraint ck_configurations_valve_setting check (length(valve_setting) <= 200),
  design_drive_flow_l_min double precision constraint ck_configurations_design_drive_flow check (design_drive_flow_l_min > 0 and design_drive_flow_l_min <= 100000),
  design_delivered_l_min  double precision constraint ck_configurations_design_delivered check (design_delivered_l_min > 0 and design_delivered_l_min <= 100000),
  vessel_precharge_bar    double precision constraint ck_configurations_vessel_precharge check (vessel_precharge_bar >= 0 and vessel_precharge_bar <= 100),
  version                 integer not null default 0,
  constraint ck_configurations_dates check (until_date > from_date),
  -- Falling water cannot lift more than its own energy: q h <= Q H.
  constraint ck_configurations_energy check (design_delivered_l_min * lift_m <= design_drive_flow_l_min * fall_m),
  constraint ex_configurations_overlap exclude using gist (install_id with =, daterange(from_date, until_date) with &&)
);
call keep_audit_of('configurations');

-- What was measured when a configuration was commissioned: later readings are compared with it.
create table baselines (
  id                   uuid constraint pk_baselines primary key,
  configuration_id     uuid not null constraint fk_baselines_configuration references configurations on delete cascade,
  taken_on             date not null,
  drive_flow_si        double precision constraint ck_baselines_drive_flow check (drive_flow_si > 0 and drive_flow_si < 10),
  delivered_flow_si    double precision constraint ck_baselines_delivered_flow check (delivered_flow_si > 0 and delivered_flow_si < 10),
  beat_rate_si         double precision constraint ck_baselines_beat_rate check (beat_rate_si > 0 and beat_rate_si < 10),
  delivery_pressure_si double precision constraint ck_baselines_delivery_pressure check (delivery_pressure_si > 0 and delivery_pressure_si < 1e8),
  report_id            uuid,
  constraint uq_baselines_configuration unique (configuration_id),
  constraint ck_baselines_some check (num_nonnulls(drive_flow_si, delivered_flow_si, beat_rate_si, delivery_pressure_si) > 0),
  constraint ck_baselines_flows check (delivered_flow_si < drive_flow_si)
);
call keep_audit_of('baselines');

-- Running, stopped, asleep: what an install does from a day on to the day before until_date.
create table running_states (
  id         uuid constraint pk_running_states primary key,
  install_id uuid not null constraint fk_running_states_install references installs,
  state      text not null constraint ck_running_states_state check (state in ('RUNNING', 'STOPPED', 'DORMANT', 'NO_WATER', 'RETIRED')),
  from_date  date,
  until_date date,
  reason     text constraint ck_running_states_reason check (length(reason) <= 1000),
  constraint ck_running_states_dates check (until_date > from_date),
  constraint ex_running_states_overlap exclude using gist (install_id with =, daterange(from_date, until_date) with &&)
);
create unique index uq_running_states_open on running_states (install_id) where until_date is null;
call keep_audit_of('running_states');
