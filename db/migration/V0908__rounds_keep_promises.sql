-- What was promised at the site, in words, and the first day that it was promised by: each later day costs in the plan.
alter table week_stops
  add column promised    text,
  add column promised_on date;
