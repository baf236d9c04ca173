-- A pump that could not be isolated when water was disinfected: kept with the reason.
alter table hygiene_records
  add column not_isolated text constraint ck_hygiene_records_not_isolated check (length(not_isolated) between 1 and 300),
  drop constraint ck_hygiene_records_isolated;
alter table hygiene_records
  add constraint ck_hygiene_records_isolated check (isolated or product is null or not_isolated is not null);
