-- When somebody works, by weekday (1 is Monday, ISO 8601). Without a person: the company's usual hours, for all who have no row.
create table shifts (
  id              uuid constraint pk_shifts primary key,
  person_id       uuid constraint fk_shifts_person references people on delete cascade,
  weekday         integer not null constraint ck_shifts_weekday check (weekday between 1 and 7),
  from_time       time not null,
  until_time      time not null,
  longest_minutes integer not null constraint ck_shifts_longest check (longest_minutes between 30 and 1440),
  break_minutes   integer not null constraint ck_shifts_break check (break_minutes between 0 and 180),
  version         integer not null default 0,
  constraint uq_shifts_day unique nulls not distinct (person_id, weekday),
  constraint ck_shifts_times check (until_time > from_time)
);
call keep_audit_of('shifts');
-- Usual hours to begin with; common practice, without source.
insert into shifts (id, weekday, from_time, until_time, longest_minutes, break_minutes)
select gen_random_uuid(), day, '07:30', '17:00', 540, 30 from generate_series(1, 5) as day;

create table public_holidays (
  day  date constraint pk_public_holidays primary key,
  name text not null constraint ck_public_holidays_name check (length(name) between 1 and 100)
);
call keep_audit_of('public_holidays');

-- Where somebody's rounds begin and end when that is not the depot.
create table round_places (
  person_id  uuid constraint pk_round_places primary key constraint fk_round_places_person references people on delete cascade,
  starts_at  text not null constraint ck_round_places_starts check (starts_at in ('DEPOT', 'HOME')),
  ends_at    text not null constraint ck_round_places_ends check (ends_at in ('DEPOT', 'HOME')),
  latitude   double precision not null constraint ck_round_places_latitude check (latitude between -90 and 90),
  longitude  double precision not null constraint ck_round_places_longitude check (longitude between -180 and 180),
  version    integer not null default 0
);
call keep_audit_of('round_places');

-- Roads of a part of the map that are slower or more winding than usual.
create table travel_areas (
  id          uuid constraint pk_travel_areas primary key,
  name        text not null constraint ck_travel_areas_name check (length(name) between 1 and 100),
  south       double precision not null constraint ck_travel_areas_south check (south between -90 and 90),
  west        double precision not null constraint ck_travel_areas_west check (west between -180 and 180),
  north       double precision not null constraint ck_travel_areas_north check (north between -90 and 90),
  east        double precision not null constraint ck_travel_areas_east check (east between -180 and 180),
  road_factor numeric(4, 2) not null constraint ck_travel_areas_road_factor check (road_factor between 1 and 5),
  speed_km_h  numeric(5, 1) not null constraint ck_travel_areas_speed check (speed_km_h between 5 and 130),
  constraint ck_travel_areas_box check (north > south and east > west)
);
call keep_audit_of('travel_areas');

-- Legs that the table service gave, by ordered pair: the way back is a leg of its own. A copy of what can be asked again,
-- so it is not audited. Positions are rounded to 1e-5 degrees, about a metre.
create table travel_legs (
  from_lat  integer not null,
  from_lon  integer not null,
  to_lat    integer not null,
  to_lon    integer not null,
  minutes   real not null constraint ck_travel_legs_minutes check (minutes >= 0),
  metres    real not null constraint ck_travel_legs_metres check (metres >= 0),
  asked_at  timestamptz not null,
  constraint pk_travel_legs primary key (from_lat, from_lon, to_lat, to_lon)
);
