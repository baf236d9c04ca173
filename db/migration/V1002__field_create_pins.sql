-- Sites whose photos somebody takes along on the phone besides those of the week's own visits.
create table pinned_sites (
  person_id uuid not null constraint fk_pinned_sites_person references people,
  site_id   uuid not null constraint fk_pinned_sites_site references sites,
  pinned_at timestamptz not null,
  constraint pk_pinned_sites primary key (person_id, site_id)
);
create index ix_pinned_sites_site on pinned_sites (site_id);
call keep_audit_of('pinned_sites');

-- What a phone's photo shows: the gate goes to the site's own pictures, a signature never goes along to anybody.
alter table field_photos add column kind text not null default 'WORK'
  constraint ck_field_photos_kind check (kind in ('WORK', 'GATE', 'SIGNATURE'));
alter table field_photos disable trigger tr_append_only;
update field_photos set kind = 'SIGNATURE' where caption = 'Signature of the customer';
alter table field_photos enable trigger tr_append_only;
