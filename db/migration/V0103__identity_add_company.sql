-- The company itself: one row, made here so that pages only ever change it.
create table company (
  id         smallint constraint pk_company primary key constraint ck_company_one check (id = 1),
  name       text constraint ck_company_name check (length(name) <= 120),
  address    text constraint ck_company_address check (length(address) <= 500),
  phone      text constraint ck_company_phone check (length(phone) <= 50),
  email      text constraint ck_company_email check (length(email) <= 200),
  tax_number text constraint ck_company_tax_number check (length(tax_number) <= 50),
  version    integer not null default 0
);
insert into company (id) values (1);
call keep_audit_of('company');

-- What a person is trained and allowed to do; task kinds ask for it. Common practice, without source.
create table skills (
  code text constraint pk_skills primary key constraint ck_skills_code check (code ~ '^[A-Z][A-Z_]{1,39}$'),
  name text not null constraint ck_skills_name check (length(name) between 1 and 100)
);
insert into skills (code, name) values
  ('LIFTING', 'Lifting and slinging'),
  ('CONFINED_SPACE', 'Confined space entry'),
  ('WATER_SAMPLING', 'Drinking water sampling'),
  ('PRESSURE', 'Pressure vessels'),
  ('PIPE_WELDING', 'Plastic pipe welding'),
  ('FIRST_AID', 'First aid');
call keep_audit_of('skills');

create table person_skills (
  person_id uuid not null constraint fk_person_skills_person references people on delete cascade,
  skill     text not null constraint fk_person_skills_skill references skills,
  constraint pk_person_skills primary key (person_id, skill)
);
call keep_audit_of('person_skills');

create table person_leave (
  id         uuid constraint pk_person_leave primary key,
  person_id  uuid not null constraint fk_person_leave_person references people on delete cascade,
  from_date  date not null,
  until_date date not null,
  note       text constraint ck_person_leave_note check (length(note) <= 200),
  constraint ck_person_leave_dates check (until_date >= from_date),
  constraint ex_person_leave_once exclude using gist (person_id with =, daterange(from_date, until_date, '[]') with &&)
);
call keep_audit_of('person_leave');
