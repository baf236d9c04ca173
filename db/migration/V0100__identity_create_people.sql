create table depots (
  id         uuid constraint pk_depots primary key,
  name       text not null constraint ck_depots_name check (length(name) between 1 and 100),
  address    text,
  latitude   double precision constraint ck_depots_latitude check (latitude between -90 and 90),
  longitude  double precision constraint ck_depots_longitude check (longitude between -180 and 180),
  altitude_m double precision constraint ck_depots_altitude check (altitude_m between -430 and 5500),
  version    integer not null default 0,
  constraint uq_depots_name unique (name),
  constraint ck_depots_position check ((latitude is null) = (longitude is null))
);
call keep_audit_of('depots');

-- The company's people. A person is not an account: a technician of an imported history has none.
create table people (
  id                uuid constraint pk_people primary key,
  name              text not null constraint ck_people_name check (length(name) between 1 and 120),
  phone             text,
  email             text,
  depot_id          uuid constraint fk_people_depot references depots,
  started_on        date,
  left_on           date,
  vehicle           text,
  next_of_kin       text,
  next_of_kin_phone text,
  version           integer not null default 0,
  constraint ck_people_dates check (left_on >= started_on)
);
create index ix_people_depot on people (depot_id);
call keep_audit_of('people');

create table accounts (
  id            uuid constraint pk_accounts primary key,
  person_id     uuid not null constraint fk_accounts_person references people constraint uq_accounts_person unique,
  login         text not null constraint ck_accounts_login check (length(login) between 1 and 100),
  password_hash text,
  disabled_at   timestamptz,
  version       integer not null default 0
);
create unique index uq_accounts_login on accounts (folded(login));
call keep_audit_of('accounts', 'password_hash');

create table account_roles (
  account_id uuid not null constraint fk_account_roles_account references accounts on delete cascade,
  role       text not null constraint ck_account_roles_role check (role in ('OFFICE', 'TECHNICIAN', 'MANAGER', 'ADMINISTRATOR')),
  constraint pk_account_roles primary key (account_id, role)
);
call keep_audit_of('account_roles');
