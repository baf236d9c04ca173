-- Who was reported to the office as not back, by mail: one mail for each person and time they were due.
create table not_back_told (
  person_id   uuid not null constraint fk_not_back_told_person references people,
  due_back_at timestamptz not null,
  told_at     timestamptz not null,
  constraint pk_not_back_told primary key (person_id, due_back_at)
);
call keep_audit_of('not_back_told');
