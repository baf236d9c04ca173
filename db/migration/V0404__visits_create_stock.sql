create table stock_places (
  id        uuid constraint pk_stock_places primary key,
  kind      text not null constraint ck_stock_places_kind check (kind in ('DEPOT', 'VAN')),
  depot_id  uuid constraint fk_stock_places_depot references depots constraint uq_stock_places_depot unique,
  person_id uuid constraint fk_stock_places_person references people constraint uq_stock_places_person unique,
  name      text not null constraint ck_stock_places_name check (length(name) between 1 and 100),
  version   integer not null default 0,
  constraint uq_stock_places_name unique (name),
  constraint ck_stock_places_owner check ((kind = 'DEPOT') = (depot_id is not null) and (kind = 'VAN') = (person_id is not null))
);
call keep_audit_of('stock_places');

-- The ledger: what came to a place and what left it. USED without stock comes with an UNCOUNTED row that says the count was off.
create table stock_movements (
  id           uuid constraint pk_stock_movements primary key,
  part_id      uuid not null constraint fk_stock_movements_part references parts,
  place_id     uuid not null constraint fk_stock_movements_place references stock_places,
  quantity     numeric not null constraint ck_stock_movements_quantity check (quantity <> 0 and abs(quantity) <= 100000),
  batch        text not null default '' constraint ck_stock_movements_batch check (length(batch) <= 60),
  at           timestamptz not null,
  by_person    uuid not null constraint fk_stock_movements_person references people,
  reason       text not null constraint ck_stock_movements_reason check (reason in ('RECEIVED', 'MOVED', 'COUNTED', 'USED', 'UNCOUNTED', 'CORRECTED', 'SCRAPPED')),
  report_id    uuid constraint fk_stock_movements_report references visit_reports,
  part_used_id uuid constraint fk_stock_movements_part_used references parts_used,
  move_id      uuid,
  note         text constraint ck_stock_movements_note check (length(note) <= 500),
  constraint uq_stock_movements_part_used unique (part_used_id, reason, batch)
);
create unique index uq_stock_movements_move on stock_movements (move_id, place_id, part_id, batch) where move_id is not null;
create index ix_stock_movements_at on stock_movements (at desc, id);
create index ix_stock_movements_part on stock_movements (part_id, at desc);
create index ix_stock_movements_report on stock_movements (report_id);
call keep_audit_of('stock_movements');
call keep_append_only('stock_movements');

-- What is on hand, kept by the ledger's own trigger; never below nothing, so the last part is given out once.
create table stock_levels (
  place_id uuid not null constraint fk_stock_levels_place references stock_places,
  part_id  uuid not null constraint fk_stock_levels_part references parts,
  batch    text not null,
  quantity numeric not null constraint ck_stock_levels_quantity check (quantity >= 0),
  constraint pk_stock_levels primary key (place_id, part_id, batch)
);
create index ix_stock_levels_part on stock_levels (part_id) where quantity > 0;
create index ix_stock_levels_batch on stock_levels (folded(batch)) where batch <> '';

create function keep_stock_level() returns trigger language plpgsql as $$
begin
  update stock_levels set quantity = quantity + new.quantity
    where place_id = new.place_id and part_id = new.part_id and batch = new.batch;
  if not found then
    insert into stock_levels (place_id, part_id, batch, quantity) values (new.place_id, new.part_id, new.batch, new.quantity)
      on conflict (place_id, part_id, batch) do update set quantity = stock_levels.quantity + excluded.quantity;
  end if;
  return null;
end $$;
create trigger tr_level after insert on stock_movements for each row execute function keep_stock_level();
