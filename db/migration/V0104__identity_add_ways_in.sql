-- Links that work once. Only the SHA-256 of the token is kept. A setup link has no account yet: it makes the first one.
create table one_time_links (
  token_hash bytea constraint pk_one_time_links primary key constraint ck_one_time_links_hash check (length(token_hash) = 32),
  account_id uuid constraint fk_one_time_links_account references accounts on delete cascade,
  purpose    text not null constraint ck_one_time_links_purpose check (purpose in ('INVITE', 'RESET', 'SETUP')),
  expires_at timestamptz not null,
  constraint ck_one_time_links_account check ((account_id is null) = (purpose = 'SETUP'))
);
create index ix_one_time_links_account on one_time_links (account_id);
call keep_audit_of('one_time_links', 'token_hash');

-- The secret of codes by RFC 6238, and the last step used, so that a code works once.
create table account_codes (
  account_id uuid constraint pk_account_codes primary key constraint fk_account_codes_account references accounts on delete cascade,
  secret     bytea not null,
  last_step  bigint not null default 0,
  since      timestamptz not null
);
call keep_audit_of('account_codes', 'secret');

create table recovery_codes (
  account_id uuid not null constraint fk_recovery_codes_account references accounts on delete cascade,
  code_hash  bytea not null,
  constraint pk_recovery_codes primary key (account_id, code_hash)
);
call keep_audit_of('recovery_codes', 'code_hash');

-- Passkeys in the form that the framework's own repository reads and writes.
create table user_credentials (
  credential_id                varchar(1000) constraint pk_user_credentials primary key,
  user_entity_user_id          varchar(1000) not null,
  public_key                   bytea not null,
  signature_count              bigint,
  uv_initialized               boolean,
  backup_eligible              boolean not null,
  authenticator_transports     varchar(1000),
  public_key_credential_type   varchar(100),
  backup_state                 boolean not null,
  attestation_object           bytea,
  attestation_client_data_json bytea,
  created                      timestamp,
  last_used                    timestamp,
  label                        varchar(1000) not null
);
create index ix_user_credentials_user on user_credentials (user_entity_user_id);
call keep_audit_of('user_credentials', 'public_key', 'attestation_object', 'attestation_client_data_json');

-- How often something guessable was tried: a level that leaks away with time. No audit: the log tells of refusals.
create table attempts (
  key        text constraint pk_attempts primary key,
  level      double precision not null,
  refused    boolean not null,
  updated_at timestamptz not null
);
create index ix_attempts_updated on attempts (updated_at);
