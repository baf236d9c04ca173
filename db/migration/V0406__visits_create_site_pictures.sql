-- Pictures that show a place itself: the gate on the way in, a drawing of the works. Photos of what was done hang on their report.
create table site_pictures (
  id       uuid constraint pk_site_pictures primary key,
  site_id  uuid not null constraint fk_site_pictures_site references sites,
  kind     text not null constraint ck_site_pictures_kind check (kind in ('GATE', 'DRAWING', 'PLACE')),
  sha256   bytea not null constraint fk_site_pictures_file references files,
  caption  text constraint ck_site_pictures_caption check (length(caption) between 1 and 300),
  added_at timestamptz not null,
  added_by uuid not null constraint fk_site_pictures_added_by references people,
  constraint uq_site_pictures_file unique (site_id, sha256)
);
create index ix_site_pictures_file on site_pictures (sha256);
create index ix_site_pictures_added_by on site_pictures (added_by);
call keep_audit_of('site_pictures');

-- Pictures made small for phones: made from the file when first asked for, so a row says nothing new and may be dropped.
create table small_pictures (
  sha256     bytea not null constraint fk_small_pictures_file references files,
  side       integer not null constraint ck_small_pictures_side check (side between 100 and 2048),
  media_type text not null constraint ck_small_pictures_media_type check (media_type in ('image/jpeg', 'image/png')),
  content    bytea not null,
  constraint pk_small_pictures primary key (sha256, side)
);
alter table small_pictures alter column content set storage external;
