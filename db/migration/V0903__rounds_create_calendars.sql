-- The secret address of a person's calendar; only the SHA-256 of the secret is kept.
create table calendar_links (
  person_id  uuid constraint pk_calendar_links primary key constraint fk_calendar_links_person references people on delete cascade,
  token_hash bytea not null constraint uq_calendar_links_hash unique constraint ck_calendar_links_hash check (length(token_hash) = 32),
  since      timestamptz not null
);
call keep_audit_of('calendar_links', 'token_hash');
