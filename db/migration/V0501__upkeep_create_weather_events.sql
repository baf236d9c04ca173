-- A flood or the like that made tasks due at every install of a valley or a map box in one step.
create table weather_events (
  id           uuid constraint pk_weather_events primary key,
  name         text not null constraint ck_weather_events_name check (length(name) between 1 and 200),
  on_date      date not null,
  due_on       date not null,
  task_kind_id uuid not null constraint fk_weather_events_task_kind references task_kinds,
  catchment_id uuid constraint fk_weather_events_catchment references catchments,
  south        double precision constraint ck_weather_events_south check (south between -90 and 90),
  west         double precision constraint ck_weather_events_west check (west between -180 and 180),
  north        double precision constraint ck_weather_events_north check (north between -90 and 90),
  east         double precision constraint ck_weather_events_east check (east between -180 and 180),
  installs     integer not null,
  created_at   timestamptz not null,
  created_by   uuid constraint fk_weather_events_created_by references people,
  constraint ck_weather_events_due check (due_on >= on_date),
  constraint ck_weather_events_where check ((catchment_id is not null) = (south is null)
    and num_nulls(south, west, north, east) in (0, 4)),
  constraint ck_weather_events_box check (south < north and west < east)
);
create index ix_weather_events_on on weather_events (on_date desc, id);
call keep_audit_of('weather_events');
