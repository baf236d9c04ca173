-- People whom only an imported history names: their reports point to them, but nobody sends them anywhere until the office says that they work here.
alter table people add of_history boolean not null default false;
