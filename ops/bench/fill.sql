-- A company as large as the aims name, in a freshly migrated database: invented, and the same at every run of one day.
-- As a superuser: psql -v ON_ERROR_STOP=1 -d ramkeeper -f fill.sql. Triggers are off while loading, so no audit rows are written.
\set installs 100000
\set sites 70000
-- fewer with -v reports=200000
\if :{?reports}
\else
\set reports 1000000
\endif
\timing on
set session_replication_role = replica;
set maintenance_work_mem = '256MB';
set work_mem = '64MB';
begin;

-- The n-th id of a table, rising like the application's own; and a number below m that only n and salt decide.
create function pg_temp.id(kind int, n bigint) returns uuid language sql immutable as
  $$ select (lpad(to_hex(kind), 8, '0') || lpad(to_hex(n), 24, '0'))::uuid $$;
create function pg_temp.pick(n bigint, salt int, m int) returns int language sql immutable as
  $$ select (abs(hashint8extended(n, salt) % m))::int $$;
create function pg_temp.word(n bigint, salt int) returns text language sql immutable as $$
  select (array['Tarn','Fern','Mill','Stone','Raven','Clay','Otter','Heather','Birch','Long','Marl','Sallow','Gorse','Kestrel','Hazel','Elder'])[1 + pg_temp.pick(n, salt, 16)]
      || (array['hollow','side','bank','ridge','combe','field','dale','rigg','shaw','mead','gill','croft','holm','lea','beck','scar'])[1 + pg_temp.pick(n, salt + 1, 16)] $$;

insert into depots (id, name, latitude, longitude)
  select pg_temp.id(1, n), 'Depot ' || pg_temp.word(n, 1) || ' ' || n, -40 - n * 0.5, 172 + n * 0.4 from generate_series(1, 8) n;
insert into people (id, name, depot_id, started_on)
  select pg_temp.id(2, n), pg_temp.word(n, 3) || ' ' || pg_temp.word(n, 5), pg_temp.id(1, 1 + n % 8), date '2015-01-01' from generate_series(1, 80) n;
insert into catchments (id, name) select pg_temp.id(3, n), pg_temp.word(n, 7) || ' valley ' || n from generate_series(1, 200) n;
insert into pump_models (id, name, drive_bore_mm) select pg_temp.id(4, n), 'Model ' || n, 25 + 10 * n from generate_series(1, 12) n;
insert into customers (id, reference, name)
  select pg_temp.id(5, n), 'C' || n, pg_temp.word(n, 9) || ' ' || pg_temp.word(n, 11) || ' farm' from generate_series(1, 60000) n;

insert into sites (id, reference, name, locality, catchment_id, depot_id, latitude, longitude, way_in, walk_minutes, source_kind, water_class, drinking_water)
  select pg_temp.id(6, n), 'S' || n, pg_temp.word(n, 13) || ' ' || (array['spring','gully','flat','top','paddock','bush'])[1 + pg_temp.pick(n, 15, 6)],
    pg_temp.word(n, 17), pg_temp.id(3, 1 + pg_temp.pick(n, 19, 200)), pg_temp.id(1, 1 + pg_temp.pick(n, 20, 8)),
    -44 + pg_temp.pick(n, 21, 40000) / 10000.0, 171 + pg_temp.pick(n, 22, 50000) / 10000.0,
    'Second gate past the ford, follow the fence down', pg_temp.pick(n, 23, 40), 'SPRING',
    (array['CLEAR','PEATY','SILTY','HARD'])[1 + pg_temp.pick(n, 24, 4)], n % 4 = 0
  from generate_series(1, :sites) n;
insert into site_parties (id, site_id, part, customer_id)
  select pg_temp.id(7, n), pg_temp.id(6, n), 'OWNER', pg_temp.id(5, 1 + n % 60000) from generate_series(1, :sites) n;
insert into site_hazards (id, site_id, kind, text)
  select pg_temp.id(8, n), pg_temp.id(6, n), 'STEEP', 'Steep and wet below the tank' from generate_series(1, :sites, 3) n;

insert into installs (id, site_id, reference, name, commissioned_on)
  select pg_temp.id(9, n), pg_temp.id(6, 1 + (n - 1) % :sites), 'R' || n, pg_temp.word(n, 25) || ' ram', date '2008-01-01' + pg_temp.pick(n, 27, 3000)
  from generate_series(1, :installs) n;
insert into configurations (id, install_id, from_date, fall_m, lift_m, drive_pipe_bore_mm, drive_pipe_length_m, design_drive_flow_l_min, design_delivered_l_min)
  select pg_temp.id(10, n), pg_temp.id(9, n), date '2008-01-01', 3, 30, 50, 18, 100, 6 from generate_series(1, :installs) n;
insert into baselines (id, configuration_id, taken_on, drive_flow_si, delivered_flow_si)
  select pg_temp.id(11, n), pg_temp.id(10, n), date '2016-03-01', 0.1 / 60, 0.006 / 60 from generate_series(1, :installs) n;
insert into running_states (id, install_id, state, from_date)
  select pg_temp.id(12, n), pg_temp.id(9, n), case when n % 20 = 0 then 'DORMANT' else 'RUNNING' end, date '2008-01-01' from generate_series(1, :installs) n;
insert into pumps (id, serial, model_id) select pg_temp.id(13, n), 'P' || (100000 + n), pg_temp.id(4, 1 + n % 12) from generate_series(1, :installs) n;
insert into pump_fittings (id, pump_id, place, install_id, place_no, from_date)
  select pg_temp.id(14, n), pg_temp.id(13, n), 'INSTALL', pg_temp.id(9, n), 1, date '2008-01-01' from generate_series(1, :installs) n;

-- Five kinds an install. One task in twenty-five is past its window, one in twenty-five within it; the rest is spread over the interval to come.
insert into service_tasks (id, install_id, pump_id, task_kind_id, last_done_on, last_done_as, counting_from, due_on, window_from, window_until, waiting, waiting_since, asleep_since)
  select pg_temp.id(15, (n - 1) * 5 + k.nth), pg_temp.id(9, n), case when k.scope = 'PUMP' then pg_temp.id(13, n) end, k.id,
    due - k.days, 'KNOWN', due - k.days, due, due - k.early_days, due + k.late_days,
    case when pg_temp.pick(n, 33, 10) = 0 then 'CANNOT_REACH' else 'OURS' end, case when pg_temp.pick(n, 33, 10) = 0 then due end,
    case when n % 20 = 0 then date '2020-05-01' end
  from generate_series(1, :installs) n
    cross join (select row_number() over (order by code) as nth, t.*, t.interval_months * 30 as days from task_kinds t
                where code in ('CLEAN_STRAINER', 'CHANGE_DELIVERY_RUBBER', 'CHANGE_WASTE_RUBBER', 'CHECK_PRECHARGE', 'INSPECT_SEALS')) k
    cross join lateral (select current_date + case pg_temp.pick(n * 5 + k.nth, 31, 25)
        when 0 then -k.late_days - 1 - pg_temp.pick(n * 5 + k.nth, 32, 200)
        when 1 then pg_temp.pick(n * 5 + k.nth, 32, k.late_days) - k.late_days
        else pg_temp.pick(n * 5 + k.nth, 32, k.days) end as due) d;

-- Some ten years of reports, oldest first.
insert into visit_reports (id, site_id, kind, attended_on, recorded_at, recorded_by, outcome, note, content_hash, source)
  select pg_temp.id(16, n), pg_temp.id(6, 1 + pg_temp.pick(n, 41, :sites)), 'SERVICE', d, d + time '17:00', pg_temp.id(2, 1 + pg_temp.pick(n, 42, 80)), 'DONE',
    case when n % 3 = 0 then 'Strainer half full of leaves; cleaned. Beats evenly.' end, sha256(int8send(n)), 'FORM'
  from generate_series(1, :reports) n cross join lateral (select current_date - 3650 + (n::bigint * 3650 / :reports)::int as d) x;
insert into report_people (report_id, person_id, lead) select id, recorded_by, true from visit_reports;
create temporary table first_install as select distinct on (site_id) site_id, id from installs order by site_id, id;
insert into report_works (id, report_id, install_id, task_kind_id, outcome)
  select pg_temp.id(17, row_number() over (order by r.id)), r.id, i.id, '01900000-0000-7000-8000-000000000001', 'DONE'
  from visit_reports r join first_install i on i.site_id = r.site_id;
insert into readings (id, report_id, install_id, quantity, place, value, unit, value_si)
  select pg_temp.id(18, row_number() over (order by r.id)), r.id, i.id, 'DELIVERED_FLOW', 'TANK', 5, 'LITRE_PER_MINUTE', 0.005 / 60
  from visit_reports r join first_install i on i.site_id = r.site_id where hashint8(('x' || substr(r.id::text, 29))::bit(32)::int) % 3 = 0;

analyze sites, site_parties, customers, installs, pump_fittings, pumps;
do $$
declare
  filled uuid[] := array(select id from sites);
begin
  call refresh_site_search(filled);
end $$;
commit;
analyze;
select (select count(*) from installs) as installs, (select count(*) from service_tasks) as tasks, (select count(*) from visit_reports) as reports,
  (select count(*) from report_works) as works, (select count(*) from readings) as readings, (select count(*) from site_search) as searchable;
