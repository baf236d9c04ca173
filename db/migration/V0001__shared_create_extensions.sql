-- Extensions that come with Postgres itself, and the one way names are folded for search.
create extension if not exists btree_gist;
create extension if not exists pg_trgm;
create extension if not exists unaccent;

-- unaccent() alone is only stable (its dictionary could change); this twin names the dictionary, so indexes may use it.
create function folded(value text) returns text
  language sql immutable strict parallel safe
  return lower(public.unaccent('public.unaccent', normalize(value, nfc)));

comment on function folded(text) is 'Text as search compares it: composed, without accents, lower case.';
