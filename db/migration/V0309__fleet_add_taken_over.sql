-- Set where an import put the install on the register: what was done before that day the books do not know.
alter table installs add column taken_over_on date;
