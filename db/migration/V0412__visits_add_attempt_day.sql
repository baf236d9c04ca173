-- The day that the customer was told or asked about: a visit may be moved afterwards.
alter table visit_attempts add for_day date;
