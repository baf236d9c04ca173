-- The end of the first window that ends before the week does: a visit on a later day of the week costs more from there on.
alter table week_stops add column late_from date;
