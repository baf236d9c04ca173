create table sites (
  id             uuid constraint pk_sites primary key,
  reference      text constraint ck_sites_reference check (length(reference) between 1 and 60),
  name           text not null constraint ck_sites_name check (length(name) between 1 and 200),
  locality       text constraint ck_sites_locality check (length(locality) <= 200),
  catchment_id   uuid constraint fk_sites_catchment references catchments,
  depot_id       uuid constraint fk_sites_depot references depots,
  latitude       double precision constraint ck_sites_latitude check (latitude between -90 and 90),
  longitude      double precision constraint ck_sites_longitude check (longitude between -180 and 180),
  altitude_m     double precision constraint ck_sites_altitude check (altitude_m between -430 and 5500),
  way_in         text constraint ck_sites_way_in check (length(way_in) <= 4000),
  gate           text constraint ck_sites_gate check (length(gate) <= 1000),
  walk_minutes   integer constraint ck_sites_walk_minutes check (walk_minutes between 0 and 600),
  source_kind    text constraint ck_sites_source_kind check (source_kind in ('SPRING', 'STREAM', 'OTHER')),
  water_class    text constraint fk_sites_water_class references water_classes,
  drinking_water boolean not null default false,
  private_notes  text constraint ck_sites_private_notes check (length(private_notes) <= 10000),
  merged_into    uuid constraint fk_sites_merged_into references sites,
  version        integer not null default 0,
  constraint ck_sites_position check ((latitude is null) = (longitude is null)),
  constraint ck_sites_merged check (merged_into <> id)
);
create unique index uq_sites_reference on sites (folded(reference)) where merged_into is null;
create index ix_sites_name on sites (folded(name), id) where merged_into is null;
create index ix_sites_catchment on sites (catchment_id);
create index ix_sites_depot on sites (depot_id);
create index ix_sites_position on sites (latitude, longitude) where merged_into is null;
create index ix_sites_merged_into on sites (merged_into) where merged_into is not null;
call keep_audit_of('sites');

-- Who plays which part at a site, from the first day on to the day before until_date; no date: before we knew, still.
create table site_parties (
  id          uuid constraint pk_site_parties primary key,
  site_id     uuid not null constraint fk_site_parties_site references sites,
  part        text not null constraint ck_site_parties_part check (part in ('OWNER', 'OCCUPIER', 'PAYER', 'KEY_HOLDER', 'LANDOWNER_CROSSED')),
  customer_id uuid constraint fk_site_parties_customer references customers,
  contact_id  uuid constraint fk_site_parties_contact references contacts,
  from_date   date,
  until_date  date,
  -- Share of the bill or the line in percent, where neighbours share one.
  share       numeric(5, 2) constraint ck_site_parties_share check (share > 0 and share <= 100),
  constraint ck_site_parties_one check ((customer_id is null) <> (contact_id is null)),
  constraint ck_site_parties_dates check (until_date > from_date),
  constraint ex_site_parties_twice exclude using gist
    (site_id with =, part with =, (coalesce(customer_id, contact_id)) with =, daterange(from_date, until_date) with &&)
);
create index ix_site_parties_site on site_parties (site_id, part);
create index ix_site_parties_customer on site_parties (customer_id);
create index ix_site_parties_contact on site_parties (contact_id);
call keep_audit_of('site_parties');

-- Shares of one part never pass the whole on any day: it is enough to look at the days on which a share begins.
create function check_shares() returns trigger language plpgsql as $$
begin
  if exists (
    select from site_parties as day
      join site_parties as p on p.site_id = day.site_id and p.part = day.part
        and daterange(p.from_date, p.until_date) @> coalesce(day.from_date, '-infinity')
      where day.site_id = new.site_id and day.part = new.part
      group by day.id having sum(p.share) > 100) then
    raise exception 'The shares of a part pass 100 percent.' using errcode = 'check_violation', constraint = 'ck_site_parties_whole';
  end if;
  return null;
end $$;
create trigger tr_shares after insert or update on site_parties
  for each row when (new.share is not null) execute function check_shares();

create table site_hazards (
  id      uuid constraint pk_site_hazards primary key,
  site_id uuid not null constraint fk_site_hazards_site references sites,
  kind    text not null constraint ck_site_hazards_kind check (kind in
    ('DOG', 'BULL', 'STEEP', 'CONFINED_SPACE', 'HEAVY_LIFT', 'DEEP_WATER', 'FORD', 'ELECTRIC_FENCE', 'SPRAYING', 'NO_SIGNAL', 'OTHER')),
  text    text constraint ck_site_hazards_text check (length(text) <= 1000),
  constraint ck_site_hazards_said check (kind <> 'OTHER' or text is not null)
);
create index ix_site_hazards_site on site_hazards (site_id);
call keep_audit_of('site_hazards');

-- When one may come; a site without rows is open at any hour. Weekday 1 is Monday (ISO 8601).
create table access_windows (
  id         uuid constraint pk_access_windows primary key,
  site_id    uuid not null constraint fk_access_windows_site references sites,
  weekday    integer not null constraint ck_access_windows_weekday check (weekday between 1 and 7),
  from_time  time not null,
  until_time time not null,
  constraint ck_access_windows_times check (until_time > from_time),
  constraint ex_access_windows_overlap exclude using gist (site_id with =, weekday with =,
    tsrange('2000-01-01'::date + from_time, '2000-01-01'::date + until_time) with &&)
);
call keep_audit_of('access_windows');

-- Lambing, shooting season, spraying: both days are closed.
create table closed_periods (
  id         uuid constraint pk_closed_periods primary key,
  site_id    uuid not null constraint fk_closed_periods_site references sites,
  from_date  date not null,
  until_date date not null,
  reason     text constraint ck_closed_periods_reason check (length(reason) <= 1000),
  constraint ck_closed_periods_dates check (until_date >= from_date)
);
create index ix_closed_periods_site on closed_periods (site_id);
call keep_audit_of('closed_periods');

-- Water-taking licences, easements and discharges; the expiry is a due date.
create table consents (
  id             uuid constraint pk_consents primary key,
  site_id        uuid not null constraint fk_consents_site references sites,
  kind           text not null constraint ck_consents_kind check (kind in ('TAKE', 'EASEMENT', 'DISCHARGE', 'OTHER')),
  number         text constraint ck_consents_number check (length(number) <= 100),
  limit_l_day    double precision constraint ck_consents_limit check (limit_l_day > 0),
  residual_l_min double precision constraint ck_consents_residual check (residual_l_min >= 0),
  granted_on     date,
  expires_on     date,
  notes          text constraint ck_consents_notes check (length(notes) <= 4000),
  version        integer not null default 0,
  constraint ck_consents_dates check (expires_on >= granted_on)
);
create index ix_consents_site on consents (site_id);
create index ix_consents_expires on consents (expires_on);
call keep_audit_of('consents');
