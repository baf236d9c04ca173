-- When a visit was planned, and when it last got another day, time, length, kind, note or other people: what its people may not
-- have seen yet. Of older visits nobody knows.
alter table visits
  add column planned_at timestamptz,
  add column changed_at timestamptz;
