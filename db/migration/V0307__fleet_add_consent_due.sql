-- The next thing to do about a consent before it expires: apply, hear the answer, send the meter's figures, renew.
alter table consents add column due_on date;
create index ix_consents_due on consents (due_on) where due_on is not null;
