-- What is still left to do, by the reports in force: what only a replaced report says is nobody's to do any more.
create view open_follow_ups as
  select f.* from follow_ups f
  where f.done_on is null and exists (select from current_reports r where r.id = f.report_id);
