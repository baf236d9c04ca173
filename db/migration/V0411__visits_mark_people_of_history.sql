-- Who is in the register only because an imported history names them: no account, no plan, no report of our own.
update people p set of_history = true
where not exists (select from accounts a where a.person_id = p.id)
  and exists (select from report_people rp join visit_reports r on r.id = rp.report_id where rp.person_id = p.id and r.source = 'IMPORT')
  and not exists (select from report_people rp join visit_reports r on r.id = rp.report_id where rp.person_id = p.id and r.source <> 'IMPORT')
  and not exists (select from visit_people vp where vp.person_id = p.id)
  and not exists (select from person_skills s where s.person_id = p.id)
  and p.phone is null and p.depot_id is null and p.started_on is null;
