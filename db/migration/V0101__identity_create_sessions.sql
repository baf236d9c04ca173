-- Web sessions, as Spring Session keeps them; wider id columns, since ids carry 256 random bits.
create table spring_session (
  primary_id            varchar(64) not null constraint pk_spring_session primary key,
  session_id            varchar(64) not null,
  creation_time         bigint not null,
  last_access_time      bigint not null,
  max_inactive_interval int not null,
  expiry_time           bigint not null,
  principal_name        varchar(100)
);
create unique index ix_spring_session_id on spring_session (session_id);
create index ix_spring_session_expiry on spring_session (expiry_time);
create index ix_spring_session_principal on spring_session (principal_name);

create table spring_session_attributes (
  session_primary_id varchar(64) not null
    constraint fk_spring_session_attributes_session references spring_session (primary_id) on delete cascade,
  attribute_name     varchar(200) not null,
  attribute_bytes    bytea not null,
  constraint pk_spring_session_attributes primary key (session_primary_id, attribute_name)
);
