-- A planned visit's minutes as given and as its tasks ask for, both with what rides along; the office may take the latter over.
alter table week_stops
  add column minutes_given  integer constraint ck_week_stops_minutes_given check (minutes_given between 5 and 1440),
  add column minutes_asked  integer constraint ck_week_stops_minutes_asked check (minutes_asked between 5 and 1440),
  add column minutes_riding integer not null default 0,
  add column minutes_taken  boolean not null default false,
  add constraint ck_week_stops_minutes_known check (not minutes_taken or num_nulls(minutes_given, minutes_asked) = 0);
