-- One statement a site, so that its plan is kept: for an array of sites the database plans anew at each call, which took five
-- times as long as the work itself. Index scans even while the tables are still empty: the plan outlives an import's first rows.
create or replace procedure refresh_site_search(sites_changed uuid[]) language plpgsql set enable_seqscan = off as $$
declare
  site uuid;
begin
  foreach site in array sites_changed loop
    insert into site_search (site_id, words)
    select s.id, folded(concat_ws(' / ', s.name, s.locality, s.reference,
        (select string_agg(concat_ws(' / ', coalesce(c.name, k.name), c.reference), ' / ' order by p.part, p.id)
           from site_parties p left join customers c on c.id = p.customer_id left join contacts k on k.id = p.contact_id
           where p.site_id = site and p.until_date is null),
        (select string_agg(concat_ws(' / ', i.name, i.reference), ' / ' order by i.name, i.id) from installs i where i.site_id = site),
        (select string_agg(u.serial, ' / ' order by u.serial) from installs i join pump_fittings f on f.install_id = i.id and f.until_date is null
           join pumps u on u.id = f.pump_id where i.site_id = site)))
    from sites s where s.id = site and s.merged_into is null
    on conflict (site_id) do update set words = excluded.words where site_search.words <> excluded.words;
    delete from site_search where site_id = site and exists (select from sites where id = site and merged_into is not null);
  end loop;
end $$;
