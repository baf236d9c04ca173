#!/usr/bin/env bash
# Runs once, on an empty volume: the owner migrates, the application works with rows only (it cannot rewrite the audit).
set -euo pipefail
psql --no-psqlrc --quiet -v ON_ERROR_STOP=1 -U postgres -d postgres <<'SQL'
\set owner `cat /run/secrets/owner_password`
\set app `cat /run/secrets/app_password`
create role ramkeeper_owner login password :'owner';
create role ramkeeper_app login password :'app';
create database ramkeeper owner ramkeeper_owner;
revoke connect, temporary on database ramkeeper from public;
grant connect, temporary on database ramkeeper to ramkeeper_app;
SQL
