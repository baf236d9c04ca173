-- The day and time that the customer agreed to. They stay when the plan moves the visit elsewhere, until the customer is told anew.
alter table visits
  add column agreed_on   date,
  add column agreed_from time,
  add constraint ck_visits_agreed check (agreed_from is null or agreed_on is not null);
update visits set agreed_on = planned_on, agreed_from = planned_from where answer = 'CONFIRMED' and state = 'PLANNED';
