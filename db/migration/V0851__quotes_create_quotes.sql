-- A quote with its revisions. What was sent never changes: another revision takes its place.
create table quotes (
  id             uuid constraint pk_quotes primary key,
  -- Given when it is first sent; drafts have none, so the series has no gaps.
  number         text constraint uq_quotes_number unique,
  enquiry_id     uuid constraint fk_quotes_enquiry references enquiries,
  customer_id    uuid constraint fk_quotes_customer references customers,
  site_id        uuid constraint fk_quotes_site references sites,
  title          text not null constraint ck_quotes_title check (length(title) between 1 and 160),
  customer_name  text not null constraint ck_quotes_customer_name check (length(customer_name) between 1 and 160),
  address        text constraint ck_quotes_address check (length(address) <= 1000),
  email          text constraint ck_quotes_email check (length(email) <= 254),
  phone          text constraint ck_quotes_phone check (length(phone) <= 60),
  place          text not null constraint ck_quotes_place check (length(place) between 1 and 160),
  created_at     timestamptz not null,
  created_by     text not null,
  version        integer not null default 0
);
create index ix_quotes_enquiry on quotes (enquiry_id);
create index ix_quotes_customer on quotes (customer_id);
create index ix_quotes_site on quotes (site_id);
call keep_audit_of('quotes');

create table quote_revisions (
  id               uuid constraint pk_quote_revisions primary key,
  quote_id         uuid not null constraint fk_quote_revisions_quote references quotes,
  revision         integer not null constraint ck_quote_revisions_revision check (revision >= 1),
  state            text not null default 'DRAFT' constraint ck_quote_revisions_state check
    (state in ('DRAFT', 'SENT', 'ACCEPTED', 'DECLINED', 'LAPSED', 'REPLACED')),
  -- The design as it was chosen, kept with the revision.
  design           jsonb,
  currency         text not null,
  tax_rounding     text not null constraint ck_quote_revisions_rounding check (tax_rounding in ('LINE', 'TOTAL')),
  discount_percent numeric(5, 2) not null default 0 constraint ck_quote_revisions_discount check (discount_percent between 0 and 100),
  valid_until      date not null,
  intro            text constraint ck_quote_revisions_intro check (length(intro) <= 4000),
  terms            text constraint ck_quote_revisions_terms check (length(terms) <= 4000),
  net              numeric(14, 2),
  tax              numeric(14, 2),
  total            numeric(14, 2),
  cost             numeric(14, 2),
  sent_at          timestamptz,
  sent_by          text,
  pdf_sha256       bytea constraint fk_quote_revisions_pdf references files,
  decided_at       timestamptz,
  decided_by       text constraint ck_quote_revisions_decided_by check (length(decided_by) <= 160),
  decided_how      text constraint ck_quote_revisions_how check (decided_how in ('LINK', 'PHONE', 'TEXT', 'PAPER')),
  decided_reason   text constraint ck_quote_revisions_reason check (length(decided_reason) <= 1000),
  -- What was accepted or declined: the hash of the paper that was sent.
  decided_sha256   bytea,
  version          integer not null default 0,
  constraint uq_quote_revisions_revision unique (quote_id, revision),
  constraint ck_quote_revisions_sent check ((state = 'DRAFT') = (sent_at is null)),
  constraint ck_quote_revisions_paper check (state = 'DRAFT' or (pdf_sha256 is not null and total is not null)),
  constraint ck_quote_revisions_decided check (state not in ('ACCEPTED', 'DECLINED')
    or (decided_at is not null and decided_by is not null and decided_how is not null and decided_sha256 = pdf_sha256))
);
create unique index uq_quote_revisions_draft on quote_revisions (quote_id) where state = 'DRAFT';
create unique index uq_quote_revisions_open on quote_revisions (quote_id) where state in ('SENT', 'ACCEPTED');
create index ix_quote_revisions_open on quote_revisions (valid_until) where state = 'SENT';
call keep_audit_of('quote_revisions');

create table quote_lines (
  id               uuid constraint pk_quote_lines primary key,
  revision_id      uuid not null constraint fk_quote_lines_revision references quote_revisions,
  position         integer not null,
  line_group       text not null constraint ck_quote_lines_group check (line_group in
    ('PUMPS', 'DRIVE_PIPE', 'DELIVERY_PIPE', 'VESSEL', 'VALVES', 'TANK', 'LABOUR', 'TRAVEL', 'OTHER')),
  text             text not null constraint ck_quote_lines_text check (length(text) between 1 and 300),
  note             text constraint ck_quote_lines_note check (length(note) <= 300),
  quantity         numeric(12, 3) not null constraint ck_quote_lines_quantity check (quantity >= 0),
  unit             text not null constraint ck_quote_lines_unit check (length(unit) between 1 and 20),
  -- Absent: nobody has priced it yet, and the quote cannot be sent.
  price            numeric(12, 4) constraint ck_quote_lines_price check (price >= 0),
  cost             numeric(12, 4) constraint ck_quote_lines_cost check (cost >= 0),
  discount_percent numeric(5, 2) not null default 0 constraint ck_quote_lines_discount check (discount_percent between 0 and 100),
  tax_name         text not null,
  tax_percent      numeric(6, 3) not null constraint ck_quote_lines_tax check (tax_percent between 0 and 100),
  thing_id         uuid constraint fk_quote_lines_thing references priced_things,
  by_hand          boolean not null default false,
  version          integer not null default 0
);
create index ix_quote_lines_revision on quote_lines (revision_id, position);
call keep_audit_of('quote_lines');

create function keep_sent_lines() returns trigger language plpgsql as $$
begin
  if exists (select 1 from quote_revisions r where r.id = coalesce(new.revision_id, old.revision_id) and r.state <> 'DRAFT') then
    raise exception 'Lines of a quote that was sent are never changed.' using errcode = 'restrict_violation';
  end if;
  return coalesce(new, old);
end $$;
create trigger tr_sent before insert or update or delete on quote_lines for each row execute function keep_sent_lines();

-- One counter a series, such as the quotes of a year; its row is locked while a number is taken, so numbers have no gaps.
create table number_series (
  name text constraint pk_number_series primary key,
  last integer not null constraint ck_number_series_last check (last >= 1)
);
call keep_audit_of('number_series');

-- What became of a quote, when and by whom.
create table quote_steps (
  id       uuid constraint pk_quote_steps primary key,
  quote_id uuid not null constraint fk_quote_steps_quote references quotes,
  revision integer not null,
  at       timestamptz not null,
  step     text not null constraint ck_quote_steps_step check (step in
    ('CREATED', 'REVISED', 'SENT', 'OPENED', 'ACCEPTED', 'DECLINED', 'LAPSED', 'LINK_MADE', 'LINK_REVOKED', 'HANDED_OVER')),
  by_whom  text not null constraint ck_quote_steps_by check (length(by_whom) <= 200),
  note     text constraint ck_quote_steps_note check (length(note) <= 1000)
);
create index ix_quote_steps_quote on quote_steps (quote_id, at);
call keep_audit_of('quote_steps');
call keep_append_only('quote_steps');

-- A customer's way to one sent revision. Only the hash of the secret is kept.
create table quote_links (
  id          uuid constraint pk_quote_links primary key,
  revision_id uuid not null constraint fk_quote_links_revision references quote_revisions,
  token_hash  bytea not null constraint uq_quote_links_token unique constraint ck_quote_links_token check (octet_length(token_hash) = 32),
  created_at  timestamptz not null,
  expires_at  timestamptz not null,
  revoked_at  timestamptz,
  opened_at   timestamptz
);
create index ix_quote_links_revision on quote_links (revision_id);
call keep_audit_of('quote_links', 'token_hash');
