-- A phone's key for one person: it signs what that person writes, so that any session of the company may carry it in.
create table field_devices (
  id            uuid constraint pk_field_devices primary key,
  person_id     uuid not null constraint fk_field_devices_person references people,
  public_key    bytea not null constraint ck_field_devices_public_key check (octet_length(public_key) between 50 and 200),
  registered_at timestamptz not null
);
create index ix_field_devices_person on field_devices (person_id);
call keep_audit_of('field_devices');
call keep_append_only('field_devices');

-- Each visit as a phone sent it, word for word, with the first answer. Kept for good, so a repeat finds its answer however late.
create table field_entries (
  id           uuid constraint pk_field_entries primary key,
  person_id    uuid not null constraint fk_field_entries_person references people,
  carried_by   uuid not null constraint fk_field_entries_carried_by references people,
  device_id    uuid constraint fk_field_entries_device references field_devices,
  content_hash bytea not null constraint ck_field_entries_content_hash check (octet_length(content_hash) = 32),
  text         text not null constraint ck_field_entries_text check (length(text) <= 1000000),
  result       text not null constraint ck_field_entries_result check (result in ('APPLIED', 'HELD')),
  photos       integer not null constraint ck_field_entries_photos check (photos between 0 and 40),
  sent_at      timestamptz,
  received_at  timestamptz not null,
  -- how far the phone's clock was ahead of ours, seconds
  clock_ahead_s bigint
);
create index ix_field_entries_received on field_entries (received_at desc, id);
call keep_audit_of('field_entries');
call keep_append_only('field_entries');

-- Photos come after the words. They join the report as soon as it is in the history.
create table field_photos (
  id          uuid constraint pk_field_photos primary key,
  entry_id    uuid not null constraint fk_field_photos_entry references field_entries,
  sent_sha256 bytea not null constraint ck_field_photos_sent check (octet_length(sent_sha256) = 32),
  sha256      bytea not null constraint fk_field_photos_file references files,
  caption     text constraint ck_field_photos_caption check (length(caption) <= 300),
  taken_at    timestamptz,
  received_at timestamptz not null
);
create index ix_field_photos_entry on field_photos (entry_id);
call keep_audit_of('field_photos');
call keep_append_only('field_photos');

alter table to_settle drop constraint ck_to_settle_reason;
alter table to_settle add constraint ck_to_settle_reason check
  (reason in ('SECOND_REPORT', 'VISIT_CANCELLED', 'VISIT_UNKNOWN', 'SUPERSEDED_ALREADY', 'REGISTER_CHANGED', 'WRITER_LOCKED', 'SIGNATURE_WRONG'));
