-- The usual kinds of service task. Intervals, windows, factors and minutes are common practice of the trade and have no
-- published source; every company sets its own. Season days suit the southern hemisphere.
insert into task_kinds (id, code, name, description, scope, schedule, interval_months, interval_days, life, early_days, late_days, grace_days,
                        after_change_days, minutes, crew, season_month, season_day, weight, watched) values
  ('01900000-0000-7000-8000-000000000001', 'CLEAN_STRAINER', 'Clean strainer',
   'Lift the strainer, brush it clean, look for damage, clear the intake.', 'INSTALL', 'INTERVAL', 3, 0, 'CALENDAR', 21, 21, 7, null, 20, 1, null, null, 1, false),
  ('01900000-0000-7000-8000-000000000002', 'CHANGE_DELIVERY_RUBBER', 'Change delivery valve rubber',
   'Stop, release, prove zero on a gauge; change the rubber, look at the seat.', 'PUMP', 'INTERVAL', 24, 0, 'RUNNING', 60, 60, 14, null, 45, 1, null, null, 3, true),
  ('01900000-0000-7000-8000-000000000003', 'CHANGE_WASTE_RUBBER', 'Change waste valve rubber',
   'Stop, release, prove zero on a gauge; change the rubber, set the stroke again.', 'PUMP', 'INTERVAL', 24, 0, 'RUNNING', 60, 60, 14, null, 45, 1, null, null, 3, true),
  ('01900000-0000-7000-8000-000000000004', 'CHECK_PRECHARGE', 'Check pre-charge',
   'With the vessel empty of water and not under pressure; note the gauge.', 'PUMP', 'INTERVAL', 12, 0, 'CALENDAR', 45, 45, 14, 30, 20, 1, null, null, 2, false),
  ('01900000-0000-7000-8000-000000000005', 'INSPECT_SEALS', 'Inspect seals',
   'Look for weeping at flanges, glands and threads while it beats.', 'PUMP', 'INTERVAL', 12, 0, 'CALENDAR', 45, 45, 14, null, 20, 1, null, null, 1, false),
  ('01900000-0000-7000-8000-000000000006', 'FLUSH_DRIVE_PIPE', 'Flush drive pipe',
   'Open the end and flush until clear; mind where the water goes.', 'INSTALL', 'INTERVAL', 24, 0, 'CALENDAR', 60, 60, 14, null, 40, 1, null, null, 1, false),
  ('01900000-0000-7000-8000-000000000007', 'OVERHAUL', 'Overhaul pump',
   'Take the pump off, renew both rubbers and all seals, check shafts and bolts.', 'PUMP', 'INTERVAL', 96, 0, 'RUNNING', 120, 120, 30, null, 240, 2, null, null, 2, false),
  ('01900000-0000-7000-8000-000000000008', 'BEFORE_FROST', 'Make ready for frost',
   'Lag what is bare, check drains and bleed; leave it running or drained, never half full.', 'INSTALL', 'SEASON', 0, 0, 'CALENDAR', 42, 14, 7, null, 30, 1, 5, 15, 2, false),
  ('01900000-0000-7000-8000-000000000009', 'AFTER_FLOOD', 'Look after a flood',
   'Intake, strainer, anchors, drive pipe, pump and tank; flush and look at the rubbers early.', 'INSTALL', 'EVENT', 0, 14, 'CALENDAR', 14, 7, 7, null, 60, 1, null, null, 4, false),
  ('01900000-0000-7000-8000-00000000000a', 'SAMPLE_WATER', 'Sample water',
   'Only where people drink it: sterile bottle, from the tap, cool, same day to the laboratory.', 'INSTALL', 'INTERVAL', 12, 0, 'CALENDAR', 30, 30, 7, null, 15, 1, null, null, 2, false);

insert into task_kind_includes (task_kind_id, included_id) values
  ('01900000-0000-7000-8000-000000000007', '01900000-0000-7000-8000-000000000002'),
  ('01900000-0000-7000-8000-000000000007', '01900000-0000-7000-8000-000000000003'),
  ('01900000-0000-7000-8000-000000000007', '01900000-0000-7000-8000-000000000005'),
  ('01900000-0000-7000-8000-000000000009', '01900000-0000-7000-8000-000000000001');

insert into task_kind_skills (task_kind_id, skill) values ('01900000-0000-7000-8000-000000000007', 'LIFTING');

insert into task_kind_parts (task_kind_id, part_kind, position, quantity) values
  ('01900000-0000-7000-8000-000000000002', 'VALVE_RUBBER', 'DELIVERY_VALVE', 1),
  ('01900000-0000-7000-8000-000000000003', 'VALVE_RUBBER', 'WASTE_VALVE', 1),
  ('01900000-0000-7000-8000-000000000005', 'SEAL', '', 1),
  ('01900000-0000-7000-8000-000000000007', 'VALVE_RUBBER', '', 2),
  ('01900000-0000-7000-8000-000000000007', 'SEAL', '', 4);

-- Silt halves a rubber's life (common practice); hard water crusts valve seats.
insert into water_factors (task_kind_id, water_class, factor) values
  ('01900000-0000-7000-8000-000000000002', 'SILTY', 0.5), ('01900000-0000-7000-8000-000000000003', 'SILTY', 0.5),
  ('01900000-0000-7000-8000-000000000002', 'HARD', 0.75), ('01900000-0000-7000-8000-000000000003', 'HARD', 0.75),
  ('01900000-0000-7000-8000-000000000001', 'SILTY', 0.5), ('01900000-0000-7000-8000-000000000001', 'PEATY', 0.75),
  ('01900000-0000-7000-8000-000000000006', 'SILTY', 0.5);

update task_kinds set drinking_water = true where code = 'SAMPLE_WATER';
