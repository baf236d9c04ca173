-- One line of folded words a site: its names, its people, its installs and the serials of the pumps there. Kept by triggers,
-- so that every way in keeps it; read through a trigram index, so that half a name or a slip of the key still finds it.
create table site_search (
  site_id uuid constraint pk_site_search primary key constraint fk_site_search_site references sites on delete cascade,
  words   text not null
);
create index ix_site_search_words on site_search using gin (words gin_trgm_ops);

create procedure refresh_site_search(sites_changed uuid[]) language sql as $$
  delete from site_search where site_id = any (sites_changed)
    and not exists (select from sites where sites.id = site_search.site_id and merged_into is null);
  insert into site_search (site_id, words)
  select s.id, folded(concat_ws(' / ', s.name, s.locality, s.reference,
      (select string_agg(concat_ws(' / ', coalesce(c.name, k.name), c.reference), ' / ' order by p.part, p.id)
         from site_parties p left join customers c on c.id = p.customer_id left join contacts k on k.id = p.contact_id
         where p.site_id = s.id and p.until_date is null),
      (select string_agg(concat_ws(' / ', i.name, i.reference), ' / ' order by i.name, i.id) from installs i where i.site_id = s.id),
      (select string_agg(u.serial, ' / ' order by u.serial) from installs i join pump_fittings f on f.install_id = i.id and f.until_date is null
         join pumps u on u.id = f.pump_id where i.site_id = s.id)))
  from sites s where s.id = any (sites_changed) and s.merged_into is null
  on conflict (site_id) do update set words = excluded.words where site_search.words <> excluded.words;
$$;

create function keep_site_search() returns trigger language plpgsql as $$
declare
  before jsonb := case when tg_op <> 'INSERT' then to_jsonb(old) else '{}' end;
  after  jsonb := case when tg_op <> 'DELETE' then to_jsonb(new) else '{}' end;
  ids    uuid[];
begin
  case tg_table_name
    when 'sites' then ids := array[(after ->> 'id')::uuid];
    when 'site_parties', 'installs' then ids := array[(before ->> 'site_id')::uuid, (after ->> 'site_id')::uuid];
    when 'pump_fittings' then
      ids := array(select site_id from installs where id in ((before ->> 'install_id')::uuid, (after ->> 'install_id')::uuid));
    when 'pumps' then
      ids := array(select i.site_id from pump_fittings f join installs i on i.id = f.install_id where f.pump_id = new.id);
    when 'customers' then ids := array(select site_id from site_parties where customer_id = new.id);
    when 'contacts' then ids := array(select site_id from site_parties where contact_id = new.id);
  end case;
  call refresh_site_search(ids);
  return null;
end $$;

create trigger tr_search after insert or update of name, locality, reference, merged_into on sites
  for each row execute function keep_site_search();
create trigger tr_search after insert or update or delete on site_parties for each row execute function keep_site_search();
create trigger tr_search after insert or update of name, reference, site_id or delete on installs
  for each row execute function keep_site_search();
create trigger tr_search after insert or update or delete on pump_fittings for each row execute function keep_site_search();
create trigger tr_search after update of serial on pumps for each row execute function keep_site_search();
create trigger tr_search after update of name, reference on customers for each row execute function keep_site_search();
create trigger tr_search after update of name on contacts for each row execute function keep_site_search();

-- For sites that may be one place registered twice.
create index ix_sites_search on sites using gin (folded(name) gin_trgm_ops) where merged_into is null;
