-- Somebody wants water lifted. Who it is may not be on the register yet; it is put there when a quote is accepted.
create table enquiries (
  id            uuid constraint pk_enquiries primary key,
  customer_id   uuid constraint fk_enquiries_customer references customers,
  site_id       uuid constraint fk_enquiries_site references sites,
  customer_name text not null constraint ck_enquiries_customer_name check (length(customer_name) between 1 and 200),
  phone         text constraint ck_enquiries_phone check (length(phone) <= 60),
  email         text constraint ck_enquiries_email check (length(email) <= 254),
  place         text constraint ck_enquiries_place check (length(place) <= 300),
  received_on   date not null,
  note          text constraint ck_enquiries_note check (length(note) <= 10000),
  state         text not null default 'OPEN' constraint ck_enquiries_state check (state in ('OPEN', 'QUOTED', 'WON', 'LOST', 'CLOSED')),
  reason        text constraint ck_enquiries_reason check (length(reason) between 1 and 1000),
  version       integer not null default 0,
  constraint ck_enquiries_where check (site_id is not null or place is not null)
);
create index ix_enquiries_list on enquiries (received_on desc, id);
create index ix_enquiries_site on enquiries (site_id) where site_id is not null;
create index ix_enquiries_customer on enquiries (customer_id) where customer_id is not null;
call keep_audit_of('enquiries');

-- What was found and wished at the site, kept exactly as typed: field name to text. Several of one site: dry season.
create table surveys (
  id          uuid constraint pk_surveys primary key,
  enquiry_id  uuid not null constraint fk_surveys_enquiry references enquiries,
  surveyed_on date,
  state       text not null default 'DRAFT' constraint ck_surveys_state check (state in ('DRAFT', 'DONE')),
  draft       jsonb not null default '{}' constraint ck_surveys_draft check (jsonb_typeof(draft) = 'object'),
  version     integer not null default 0
);
create index ix_surveys_enquiry on surveys (enquiry_id, id);
call keep_audit_of('surveys');

create table survey_photos (
  id        uuid constraint pk_survey_photos primary key,
  survey_id uuid not null constraint fk_survey_photos_survey references surveys,
  sha256    bytea not null constraint fk_survey_photos_file references files,
  taken_at  timestamptz,
  constraint uq_survey_photos unique (survey_id, sha256)
);
create index ix_survey_photos_file on survey_photos (sha256);
call keep_audit_of('survey_photos');
