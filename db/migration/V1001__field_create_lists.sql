-- From what is seen to what it may be to what to do, in the order in which to look. Common practice, without source.
create table field_causes (
  symptom text not null constraint ck_field_causes_symptom check (length(symptom) between 1 and 40),
  seq     integer not null constraint ck_field_causes_seq check (seq between 1 and 50),
  cause   text not null constraint ck_field_causes_cause check (length(cause) between 1 and 300),
  action  text not null constraint ck_field_causes_action check (length(action) between 1 and 300),
  constraint pk_field_causes primary key (symptom, seq)
);
call keep_audit_of('field_causes');

insert into field_causes (symptom, seq, cause, action) values
  ('STOPPED_OPEN', 1, 'Source low: not enough drive water', 'Measured the source; set the valve for less water'),
  ('STOPPED_OPEN', 2, 'Strainer blocked', 'Cleaned the strainer'),
  ('STOPPED_OPEN', 3, 'Air in the drive pipe', 'Let the air out and started again'),
  ('STOPPED_OPEN', 4, 'Waste valve stroke set too long', 'Set the stroke back'),
  ('STOPPED_OPEN', 5, 'Grit under the waste valve', 'Cleaned the waste valve'),
  ('STOPPED_OPEN', 6, 'Delivery line empty after work on it: nothing to beat against', 'Held the valve by hand until the line had filled'),
  ('STOPPED_SHUT', 1, 'Delivery shut: closed valve or float at the tank', 'Opened the delivery'),
  ('STOPPED_SHUT', 2, 'Water ran out and came back', 'Started by hand'),
  ('STOPPED_SHUT', 3, 'Delivery valve does not hold, no recoil', 'Changed the delivery valve rubber'),
  ('STOPPED_SHUT', 4, 'Waste valve sticks', 'Cleaned and freed the waste valve'),
  ('BEATS_NO_WATER', 1, 'Float or branch shut at the tank end', 'Checked the float and the branches'),
  ('BEATS_NO_WATER', 2, 'Leak on the delivery line', 'Walked the line and mended it'),
  ('BEATS_NO_WATER', 3, 'Delivery valve rubber worn', 'Changed the delivery valve rubber'),
  ('BEATS_NO_WATER', 4, 'Air lock at a high point', 'Let the air out'),
  ('LESS_WATER', 1, 'Source lower than usual', 'Measured the source'),
  ('LESS_WATER', 2, 'Strainer partly blocked', 'Cleaned the strainer'),
  ('LESS_WATER', 3, 'Valve setting moved', 'Set and locked it'),
  ('LESS_WATER', 4, 'Leak on drive or delivery pipe', 'Found and mended the leak'),
  ('LESS_WATER', 5, 'Pre-charge low', 'Charged the vessel, empty and off pressure'),
  ('LESS_WATER', 6, 'Valve rubbers worn', 'Changed the rubbers'),
  ('UNEVEN_BEAT', 1, 'Air drawn in at intake or a joint', 'Closed the leak; covered the intake'),
  ('UNEVEN_BEAT', 2, 'Waste valve rubber worn or crooked', 'Changed the waste valve rubber'),
  ('UNEVEN_BEAT', 3, 'Something moving in the valve', 'Cleaned the valve'),
  ('LOUD_KNOCK', 1, 'Vessel without gas', 'Charged the vessel, empty and off pressure'),
  ('LOUD_KNOCK', 2, 'Snifter blocked, chamber waterlogged', 'Cleaned the snifter, drained the chamber'),
  ('LOUD_KNOCK', 3, 'Drive pipe loose', 'Fixed the pipe'),
  ('INTAKE_BLOCKED', 1, 'Leaves or silt at the strainer', 'Cleaned the strainer'),
  ('SOURCE_DRY', 1, 'Dry season', 'Shut down; told the customer'),
  ('FLOOD_DAMAGE', 1, 'Flood went over the pump', 'Flushed, inspected, listed what is damaged'),
  ('MISSING_PART', 1, 'Strainer stolen', 'Fitted a new strainer'),
  ('LEAK_PUMP', 1, 'Seal or gasket worn', 'Changed the seal'),
  ('FAST_BEAT', 1, 'Valve setting too short', 'Set and locked it'),
  ('SLOW_BEAT', 1, 'Valve setting too long', 'Set and locked it');

-- Guided lists. A list is never changed: a new edition gets the next number, and a visit keeps the number it was done with.
create table field_checklists (
  id         uuid constraint pk_field_checklists primary key,
  kind       text not null constraint ck_field_checklists_kind check (kind in ('COMMISSIONING')),
  -- none: for all models without a list of their own
  model_id   uuid constraint fk_field_checklists_model references pump_models,
  edition    integer not null constraint ck_field_checklists_edition check (edition >= 1),
  items      jsonb not null constraint ck_field_checklists_items check (jsonb_typeof(items) = 'array'),
  created_at timestamptz not null,
  created_by uuid constraint fk_field_checklists_created_by references people,
  constraint uq_field_checklists_edition unique nulls not distinct (kind, model_id, edition)
);
call keep_audit_of('field_checklists');
call keep_append_only('field_checklists');

-- Common practice, without source; the maker's instructions come first.
insert into field_checklists (id, kind, edition, created_at, items) values ('01900000-0000-7000-8000-0000000f0001', 'COMMISSIONING', 1, now(), '[
  {"code":"DRAIN","text":"The chamber drain carries the whole drive flow, in a flood too","hold":true},
  {"code":"HEIGHT","text":"Drive pipe high enough above the floor to turn the pump on: 150 mm, or the maker''s figure","hold":true},
  {"code":"THREAD","text":"Threads sealed as the maker says"},
  {"code":"FLUSH","text":"Drive pipe flushed several times, until the water ran clear","hold":true},
  {"code":"SEALS","text":"Seals in place"},
  {"code":"RUBBERS","text":"Valve rubbers in the maker''s order"},
  {"code":"SUPPORT","text":"Pump supported, and removable"},
  {"code":"CHARGE","text":"Vessel charged, empty of water and off pressure","hold":true,"caution":"PRESSURE","reading":"PRE_CHARGE"},
  {"code":"OPEN","text":"Delivery open","hold":true},
  {"code":"START","text":"Started by hand"},
  {"code":"BEAT","text":"Even beat"},
  {"code":"SETTING","text":"Valve setting turned step by step, delivered flow at each step","steps":true},
  {"code":"LOCK","text":"Setting locked","hold":true},
  {"code":"TAUGHT","text":"Customer shown: stop, start, clean the strainer, and what never to do","hold":true}
]');
