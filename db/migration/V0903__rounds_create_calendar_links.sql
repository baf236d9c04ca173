-- A person's secret way to their own rounds as a calendar, and to nothing else. Only the hash of the secret is kept; one at a time works.
create table calendar_links (
  id         uuid constraint pk_calendar_links primary key,
  person_id  uuid not null constraint fk_calendar_links_person references people,
  token_hash bytea not null constraint uq_calendar_links_token unique constraint ck_calendar_links_token check (octet_length(token_hash) = 32),
  created_at timestamptz not null,
  revoked_at timestamptz
);
create unique index uq_calendar_links_person on calendar_links (person_id) where revoked_at is null;
call keep_audit_of('calendar_links', 'token_hash');
