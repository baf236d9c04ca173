// Tasks answered, what was not right, parts fitted.
import { h, field, choose, number, parse } from './dom.js';
import { numberField } from './numbers.js';
import { db, kindOf, partName } from './data.js';
import { caution } from './caution.js';
import { partAsked } from './needs.js';
import { only, where } from './where.js';

export const PRESSURE = ['CHECK_PRECHARGE', 'CHANGE_DELIVERY_RUBBER', 'CHANGE_WASTE_RUBBER', 'INSPECT_SEALS', 'OVERHAUL'];

const pressing = (d) => d.tasks.some((t) => PRESSURE.includes(kindOf(t.kind)?.code));

export function tasks(c) {
  if (!c.d.tasks.length) {
    return null;
  }
  return [h('h2', null, 'Tasks'), caution(c, 'PRESSURE', pressing(c.d)), c.d.tasks.map((t) => {
    const name = `${kindOf(t.kind)?.name || 'Task'}${c.installs.length > 1 ? `, ${db.installs.get(t.install)?.name || ''}` : ''}`;
    return h('div', null, field(name, choose(db.words.workOutcome, t.outcome, (v) => { Object.assign(t, { outcome: v, usual: false }); c.again(); }, 'not answered')),
      c.d.cases?.includes('OWNER') ? h('div', { className: 'row' }, h('button', { 'aria-pressed': String(t.by === 'OWNER'), onclick: () => { Object.assign(t, t.by === 'OWNER' ? { by: null, outcome: null } : { by: 'OWNER', outcome: 'DONE' }); c.again(); } }, 'Owner did this')) : null,
      t.by === 'OWNER' ? field('About when, which part', h('input', { type: 'text', maxLength: 300, value: t.note || '', oninput: (e) => { t.note = e.target.value; c.save(); } }), 'about May; part not known') : null,
      t.outcome === 'COULD_NOT' ? field('Why', choose(db.words.reason, t.reason, (v) => { t.reason = v; c.save(); }, 'say why')) : null,
      t.outcome === 'INSPECTED_GOOD' ? field('Look again on', h('input', { type: 'date', value: t.lookAgainOn || '', oninput: (e) => { t.lookAgainOn = e.target.value || null; c.save(); } })) : null,
      partAsked(c, t));
  })];
}

/** Puts a suggestion where nothing, or the last suggestion, stands; what was typed stays. */
function suggest(f, cause, action) {
  f.suggested ??= {};
  for (const [key, words] of [['cause', cause], ['action', action]]) {
    if (!f[key]?.trim() || f[key] === f.suggested[key]) {
      f[key] = f.suggested[key] = words;
    }
  }
}

export function findings(c) {
  return [h('h2', null, 'Findings'), c.d.findings.map((f, n) => {
    const known = db.data.causes.filter((x) => x.symptom === f.symptom);
    const typed = (key, label) => field(label, h('input', { type: 'text', value: f[key] || '', oninput: (e) => { f[key] = e.target.value; c.save(); } }));
    return h('div', null, where(c, f, 'Where', { site: true }), field('What is wrong', choose(db.words.symptom, f.symptom, (v) => { f.symptom = v; suggest(f, '', ''); c.again(); }, 'choose')),
      known.length ? h('div', { role: 'group', 'aria-label': 'Likely causes, in the order to look' }, h('p', { className: 'soft' }, 'Likely causes, in the order to look:'), known.map((k) => h('div', { className: 'row' }, h('button', { 'aria-pressed': String(f.cause === k.cause), onclick: () => { suggest(f, k.cause, k.action); c.again(); } }, k.cause)))) : null,
      f.symptom || f.cause || f.action ? [typed('cause', 'Cause'), typed('action', 'What was done')] : null, h('button', { onclick: () => { c.d.findings.splice(n, 1); c.again(); } }, 'Take it away'));
  }), h('div', { className: 'row' }, h('button', { onclick: () => { c.d.findings.push({ install: only(c.installs), symptom: null }); c.again(); } }, 'Add a finding'))];
}

/** The parts of the van, and one that was named though the van counts none of it. */
const onVan = (part) => db.data.van.map((v) => [v.id, `${v.name} (${number(v.quantity)} ${v.unit})`]).concat(part && !db.data.van.some((v) => v.id === part) ? [[part, `${partName(part)} (none counted on the van)`]] : []);

export function parts(c) {
  return [h('h2', null, 'Parts'), caution(c, 'PRESSURE', c.d.parts.length > 0 && !pressing(c.d)), c.d.parts.map((p, n) => h('div', null,
    field('From the van', choose(onVan(p.part), p.part, (v) => { p.part = v; c.again(); }, 'another part')),
    where(c, p, 'Fitted in'), p.part ? null : field('Which part', h('input', { type: 'text', value: p.text || '', oninput: (e) => { p.text = e.target.value; c.save(); } })),
    h('div', { className: 'row' }, numberField('How many', p.quantity, (text) => { p.quantity = text; c.save(); }, { says: (text) => (parse(text) === 0 ? 'How many were used? More than none.' : '') }),
      field('Batch', h('input', { type: 'text', value: p.batch || '', oninput: (e) => { p.batch = e.target.value; c.save(); } }))),
    h('button', { onclick: () => { c.d.parts.splice(n, 1); c.again(); } }, 'Take it away'))),
  c.installs.length ? h('div', { className: 'row' }, h('button', { onclick: () => { c.d.parts.push({ install: only(c.installs), part: null, quantity: '1' }); c.again(); } }, 'Add a part')) : null];
}
