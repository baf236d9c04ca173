-- What is taken off a group of lines or the whole quote: a share or an amount.
create table quote_discounts (
  id          uuid constraint pk_quote_discounts primary key,
  revision_id uuid not null constraint fk_quote_discounts_revision references quote_revisions,
  position    integer not null,
  -- Absent: the whole quote.
  line_group  text constraint ck_quote_discounts_group check (line_group in
    ('PUMPS', 'DRIVE_PIPE', 'DELIVERY_PIPE', 'VESSEL', 'VALVES', 'TANK', 'LABOUR', 'TRAVEL', 'OTHER')),
  percent     numeric(5, 2) constraint ck_quote_discounts_percent check (percent > 0 and percent <= 100),
  amount      numeric(12, 2) constraint ck_quote_discounts_amount check (amount > 0),
  text        text constraint ck_quote_discounts_text check (length(text) between 1 and 160),
  constraint ck_quote_discounts_one check ((percent is null) <> (amount is null))
);
create index ix_quote_discounts_revision on quote_discounts (revision_id, position);
call keep_audit_of('quote_discounts');

insert into quote_discounts (id, revision_id, position, percent)
  select gen_random_uuid(), id, 1, discount_percent from quote_revisions where discount_percent > 0;
alter table quote_revisions drop column discount_percent;
create trigger tr_sent before insert or update or delete on quote_discounts for each row execute function keep_sent_lines();
