-- Valleys as the trade sees them: a flood hits one, weed and disease must not be carried into another.
create table catchments (
  id          uuid constraint pk_catchments primary key,
  name        text not null constraint ck_catchments_name check (length(name) between 1 and 100),
  biosecurity text not null default 'CLEAN' constraint ck_catchments_biosecurity check (biosecurity in ('CLEAN', 'WEED', 'DISEASE')),
  version     integer not null default 0
);
create unique index uq_catchments_name on catchments (folded(name));
call keep_audit_of('catchments');

create table customers (
  id              uuid constraint pk_customers primary key,
  reference       text constraint ck_customers_reference check (length(reference) between 1 and 60),
  name            text not null constraint ck_customers_name check (length(name) between 1 and 200),
  billing_address text constraint ck_customers_billing_address check (length(billing_address) <= 1000),
  email           text constraint ck_customers_email check (length(email) <= 254),
  phone           text constraint ck_customers_phone check (length(phone) <= 60),
  private_notes   text constraint ck_customers_private_notes check (length(private_notes) <= 10000),
  -- A duplicate stays as a signpost to the customer it was merged into.
  merged_into     uuid constraint fk_customers_merged_into references customers,
  version         integer not null default 0,
  constraint ck_customers_merged check (merged_into <> id)
);
create unique index uq_customers_reference on customers (folded(reference)) where merged_into is null;
create index ix_customers_name on customers (folded(name), id) where merged_into is null;
create index ix_customers_search on customers using gin (folded(name) gin_trgm_ops) where merged_into is null;
create index ix_customers_merged_into on customers (merged_into) where merged_into is not null;
call keep_audit_of('customers');

-- People outside the company who are not customers: who holds the key, whose paddock the pipe crosses.
create table contacts (
  id      uuid constraint pk_contacts primary key,
  name    text not null constraint ck_contacts_name check (length(name) between 1 and 200),
  phone   text constraint ck_contacts_phone check (length(phone) <= 60),
  email   text constraint ck_contacts_email check (length(email) <= 254),
  notes   text constraint ck_contacts_notes check (length(notes) <= 10000),
  version integer not null default 0
);
create index ix_contacts_search on contacts using gin (folded(name) gin_trgm_ops);
call keep_audit_of('contacts');
