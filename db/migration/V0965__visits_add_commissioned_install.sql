-- Which install a commissioning was for, and the valve setting it was left and locked at. Older reports do not say.
alter table visit_reports
  add commissioned_install_id uuid constraint fk_visit_reports_commissioned references installs,
  add valve_setting text constraint ck_visit_reports_valve_setting check (length(valve_setting) <= 200);
create index ix_visit_reports_commissioned on visit_reports (commissioned_install_id) where commissioned_install_id is not null;
