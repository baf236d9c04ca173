-- The design that was chosen for a survey, whole: a later change of prices, models or the survey does not move it.
create table design_choices (
  id            uuid constraint pk_design_choices primary key,
  survey_id     uuid not null constraint fk_design_choices_survey references surveys,
  chosen_on     date not null,
  chosen_by     uuid not null constraint fk_design_choices_by references people,
  design        jsonb not null,
  -- What the pages draw beside it: delivered flow against valve setting and source flow.
  curves        jsonb not null,
  p10_l_day     double precision not null constraint ck_design_choices_p10 check (p10_l_day >= 0),
  p50_l_day     double precision not null,
  p90_l_day     double precision not null,
  demand_l_day  double precision not null constraint ck_design_choices_demand check (demand_l_day > 0),
  constraint ck_design_choices_range check (p10_l_day <= p50_l_day and p50_l_day <= p90_l_day)
);
create index ix_design_choices_survey on design_choices (survey_id, id);
call keep_audit_of('design_choices');
call keep_append_only('design_choices');
