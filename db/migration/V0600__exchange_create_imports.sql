create table imports (
  id            uuid constraint pk_imports primary key,
  kind          text not null constraint ck_imports_kind check (kind in ('REGISTER', 'HISTORY')),
  file_name     text not null constraint ck_imports_file_name check (length(file_name) between 1 and 200),
  sha256        bytea not null constraint ck_imports_sha256 check (octet_length(sha256) = 32),
  how_read      text not null,
  headings      jsonb not null,
  -- what the file itself gives away about its dates and numbers
  order_seen    text constraint ck_imports_order_seen check (order_seen in ('DAY_FIRST', 'MONTH_FIRST')),
  open_date     text,
  comma_seen    boolean not null,
  open_number   text,
  -- what the person has said: the column of each field, and how dates and numbers are read
  mapping       jsonb,
  date_order    text constraint ck_imports_date_order check (date_order in ('DAY_FIRST', 'MONTH_FIRST')),
  decimal_mark  text constraint ck_imports_decimal_mark check (decimal_mark in ('POINT', 'COMMA')),
  state         text not null constraint ck_imports_state check (state in
                  ('STAGED', 'CHECKING', 'CHECKED', 'APPLYING', 'APPLIED', 'UNDOING', 'UNDONE')),
  stop_wanted   boolean not null default false,
  remark        text,
  started_by    uuid not null constraint fk_imports_started_by references people,
  actor         text not null,
  created_at    timestamptz not null default now(),
  finished_at   timestamptz
);
create index ix_imports_created on imports (created_at desc, id);
create index ix_imports_sha256 on imports (sha256);
call keep_audit_of('imports');

-- The rows of a file while it is looked at, and what became of each. Not audited: it is a copy of a file, and what it
-- does to the register is audited there.
create table import_rows (
  import_id uuid not null constraint fk_import_rows_import references imports on delete cascade,
  line      integer not null constraint ck_import_rows_line check (line > 0),
  cells     jsonb not null,
  state     text not null default 'NEW' constraint ck_import_rows_state check (state in
              ('NEW', 'READY', 'UNCHANGED', 'PROBLEM', 'APPLIED', 'UNDONE')),
  problems  jsonb not null default '[]',
  -- the reference or, without one, what else names the thing; the serial; a hash of all that the row says
  thing     text,
  serial    text,
  content   text,
  -- the ids of what was made of the row, by table
  made      jsonb,
  constraint pk_import_rows primary key (import_id, line)
);
create index ix_import_rows_state on import_rows (import_id, state, line);
create index ix_import_rows_thing on import_rows (folded(thing)) where state = 'APPLIED';

-- What was chosen for a set of headings, for the next file of the same make.
create table column_mappings (
  id           uuid constraint pk_column_mappings primary key,
  kind         text not null constraint ck_column_mappings_kind check (kind in ('REGISTER', 'HISTORY')),
  headings     text not null,
  mapping      jsonb not null,
  date_order   text constraint ck_column_mappings_date_order check (date_order in ('DAY_FIRST', 'MONTH_FIRST')),
  decimal_mark text constraint ck_column_mappings_decimal_mark check (decimal_mark in ('POINT', 'COMMA')),
  constraint uq_column_mappings_headings unique (kind, headings)
);
call keep_audit_of('column_mappings');
