-- By when the technician of a published round should be back. Checking in with a time of one's own (field_days) overrides it; whoever does
-- not check in at all is missed by this one. `heard_at`: the office has heard that they are back.
create table rounds_due_back (
  person_id   uuid not null constraint fk_rounds_due_back_person references people,
  day         date not null,
  plan_id     uuid not null constraint fk_rounds_due_back_plan references week_plans,
  due_back_at timestamptz not null,
  heard_at    timestamptz,
  constraint pk_rounds_due_back primary key (person_id, day)
);
call keep_audit_of('rounds_due_back');
