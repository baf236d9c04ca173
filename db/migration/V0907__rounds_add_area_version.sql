-- So that of two who change one area at once the second sees what the first did.
alter table travel_areas add column version integer not null default 0;
