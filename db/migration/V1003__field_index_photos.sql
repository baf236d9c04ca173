-- A signature is known by what it shows, also where a correction holds it under a new id.
create index ix_field_photos_sha256 on field_photos (sha256);
