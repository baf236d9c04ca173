-- Files live in the database, keyed by what they hold: the same picture twice is one row.
create table files (
  sha256     bytea constraint pk_files primary key constraint ck_files_sha256 check (octet_length(sha256) = 32),
  media_type text not null constraint ck_files_media_type check (media_type in ('image/jpeg', 'image/png', 'application/pdf', 'audio/wav')),
  size       integer not null constraint ck_files_size check (size > 0),
  content    bytea not null,
  created_at timestamptz not null,
  constraint ck_files_content check (octet_length(content) = size)
);
-- A picture is compressed already.
alter table files alter column content set storage external;

-- Who brought which file and when: the quota counts here, and a file no record uses yet is open to its bringer only.
create table file_uploads (
  id        uuid constraint pk_file_uploads primary key,
  sha256    bytea not null constraint fk_file_uploads_file references files,
  person_id uuid not null constraint fk_file_uploads_person references people,
  size      integer not null,
  at        timestamptz not null
);
create index ix_file_uploads_person on file_uploads (person_id, at);
create index ix_file_uploads_file on file_uploads (sha256);
call keep_audit_of('file_uploads');
