// Cases from life: one tap, and what follows is written down. A second tap takes it back.
import { choose, h, field } from './dom.js';
import { db, installsOf, iso } from './data.js';
import { only, unplaced } from './where.js';

const inDays = (n) => { const d = new Date(); d.setDate(d.getDate() + n); return iso(d); };
const stop = (d, reason) => { d.outcome = 'COULD_NOT'; d.reason = reason; d.tasks.forEach((t) => { if (!t.outcome || t.usual) { Object.assign(t, { outcome: 'COULD_NOT', reason }); } }); };

/** Code, words on the button, what follows in words, what follows in the record. */
const CASES = [
  ['GATE', 'Gate locked', 'Counted as a visit in vain; after three running the office must ring before anybody drives.', (d, add) => {
    stop(d, 'LOCKED_GATE');
    add.left('Ring for the key and plan again: the gate was locked');
  }],
  ['DRY', 'Source dry', 'Kept as a reading of no flow on this day, for the next design. The tasks sleep as soon as the office sets the install to no water.', (d, add) => {
    stop(d, 'NO_WATER');
    add.find('SOURCE_DRY', 'Dry season', '', true);
    add.reading('SOURCE_FLOW', 'SOURCE', '0');
    add.left('Set the install to no water, and ask when the source is back');
  }],
  ['STRAINER', 'Strainer stolen', 'Write what was fitted for now, and flush the drive pipe. An early look at the rubbers is put down for 30 days from now (common practice, no source).', (d, add) => {
    add.find('MISSING_PART', 'Strainer stolen', '');
    add.left('Bring the right strainer; tell the owner');
    add.left('Look early at the valve rubbers: the pump may have run without a strainer', inDays(30));
  }],
  ['FLOOD', 'Flood went over it', 'Look at intake, chamber, vessel, rubbers and seals before it is started.', (d, add) => {
    add.find('FLOOD_DAMAGE', 'Flood went over the pump', '', true);
    add.left('Look after the flood: intake, chamber, vessel, rubbers, seals');
  }],
  ['OWNER', 'Owner did it', 'Mark below which tasks the owner did, about when, and with which part. They count as done by the owner.', () => {}],
  ['SWAPPED', 'Pump swapped', 'The history stays with the serial number and the site keeps its place. Today’s readings are not compared with the old pump’s.', () => {}],
  ['LOAN', 'Pump on loan', 'The office enters the loan and fetches it back in time. Today’s readings are not compared with the customer’s own pump’s.', () => {}],
  ['MOVED', 'Pump moved', 'The office closes the old baseline and opens a new configuration. Measure fall and lift anew; today’s readings are not compared with the old place’s.', () => {}],
];

const CHANGES = [['MOVED', 'Pump moved'], ['SWAPPED', 'Pump swapped'], ['LOAN', 'Pump on loan']];
/** Nobody has said yet at which install of the site the pump was changed. */
const nowhere = (d, code) => unplaced(installsOf(d.site), { install: d.register?.[code] });

/** Why today's readings at an install cannot be compared with its baseline, or null. */
export const changed = (d, install) => CHANGES.find(([code]) => d.cases?.includes(code) && (nowhere(d, code) || only(installsOf(d.site)) || d.register?.[code] === install))?.[1] || null;

/** Changes of a pump that do not say at which install. */
export const unsettled = (d) => CHANGES.filter(([code]) => d.cases?.includes(code) && nowhere(d, code)).map(([, name]) => `${name}: say at which install.`);

const NO_PLATE = 'No plate, or unreadable';
const SERIALS = { SWAPPED: [['out', 'serial taken out'], ['into', 'serial put in']], LOAN: [['loan', 'serial of the loan pump']] };

/** Serials that are neither given nor said to be unreadable: asked about once. */
export const serialEnds = (d) => Object.entries(SERIALS).filter(([code]) => d.cases?.includes(code)).flatMap(([code, list]) => list.filter(([key]) => !d.register?.[key]?.trim() && !d.register?.noPlate?.[key])
  .map(([key, name]) => ({ say: `${CHANGES.find(([x]) => x === code)[1]}: the ${name} is not given. Type it, or tap “${NO_PLATE}”.`, note: `${CHANGES.find(([x]) => x === code)[1]}: ${name} not given.` })));

/** What the office changes in the register. */
export function registerWork(d) {
  const on = (code) => d.cases?.includes(code);
  const r = d.register || {};
  const said = (text) => text?.trim() || 'not known';
  const serial = (key) => r[key]?.trim() || (r.noPlate?.[key] ? NO_PLATE.toLowerCase() : 'not known');
  const register = (code) => `Register${installsOf(d.site).length > 1 && db.installs.has(r[code]) ? `, ${db.installs.get(r[code]).name}` : ''}`;
  return [on('SWAPPED') && { text: `${register('SWAPPED')}: pump swapped. Serial out: ${serial('out')}; serial in: ${serial('into')}; the old pump is now: ${said(r.oldAt)}`, dueOn: null, promised: false },
    on('LOAN') && { text: `${register('LOAN')}: loan pump fitted. Serial: ${serial('loan')}`, dueOn: null, promised: false },
    on('LOAN') && r.back && { text: `Fetch the loan pump back. Serial: ${serial('loan')}`, dueOn: r.back, promised: false },
    on('MOVED') && { text: `${register('MOVED')}: pump moved. New place: ${said(r.place)}. New configuration; the old baseline ends`, dueOn: null, promised: false }].filter(Boolean);
}

function toggle(c, code, step) {
  const { d } = c;
  d.cases ??= [];
  if (!d.cases.includes(code)) {
    d.cases.push(code);
    step(d, {
      find: (symptom, cause, action, whole = false) => d.findings.push({ install: only(c.installs), whole, symptom, cause, action, of: code }),
      left: (text, dueOn = null) => d.followUps.push({ text, dueOn, promised: false, of: code }),
      // a source that is dry is dry for each install of the site; one with a source of its own is typed over
      reading: (quantity, place, value) => c.installs.forEach((i) => { d.readings[`${i.id}|${quantity}`] ??= { value, unit: 'LITRE_PER_MINUTE', place, of: code }; }),
    });
    return;
  }
  const reason = { GATE: 'LOCKED_GATE', DRY: 'NO_WATER' }[code];
  d.cases = d.cases.filter((x) => x !== code);
  d.findings = d.findings.filter((f) => f.of !== code);
  d.followUps = d.followUps.filter((f) => f.of !== code);
  d.readings = Object.fromEntries(Object.entries(d.readings).filter(([, r]) => r.of !== code));
  if (reason && d.reason === reason) {
    Object.assign(d, { outcome: 'DONE', reason: null });
    d.tasks.filter((t) => t.reason === reason).forEach((t) => Object.assign(t, { outcome: null, reason: null }));
  }
  if (code === 'OWNER') {
    d.tasks.filter((t) => t.by === 'OWNER').forEach((t) => Object.assign(t, { by: null, outcome: null }));
  }
}

export function cases(c) {
  const { d } = c;
  const on = CASES.filter(([code]) => d.cases?.includes(code));
  const typed = (key, label, type = 'text') => field(label, h('input', { type, maxLength: 300, autocomplete: 'off', value: d.register?.[key] || '', oninput: (e) => { d.register ??= {}; d.register[key] = e.target.value; c.save(); } }));
  const at = (code) => (c.installs.length > 1 && CHANGES.some(([x]) => x === code) ? field('At which install', choose(c.installs.map((i) => [i.id, i.name]), d.register?.[code] || null, (v) => { d.register ??= {}; d.register[code] = v; c.again(); }, 'choose')) : null);
  const serial = (key, label) => [typed(key, label), h('div', { className: 'row' }, h('button', { 'aria-pressed': String(!!d.register?.noPlate?.[key]), 'aria-label': `${NO_PLATE}: ${label.toLowerCase()}`, onclick: () => {
    d.register ??= {}; d.register.noPlate = { ...d.register.noPlate, [key]: !d.register.noPlate?.[key] }; c.again(); } }, NO_PLATE))];
  const asks = { SWAPPED: () => [serial('out', 'Serial taken out'), serial('into', 'Serial put in'), typed('oldAt', 'Where the old pump is now')], LOAN: () => [serial('loan', 'Serial of the loan pump'), typed('back', 'Back by', 'date')], MOVED: () => typed('place', 'Where it stands now') };
  return h('details', { open: on.length > 0 || undefined }, h('summary', { className: 'button' }, 'Something else came up'),
    h('div', { className: 'row' }, CASES.map(([code, name, , step]) => h('button', { 'aria-pressed': String(!!d.cases?.includes(code)), onclick: () => { toggle(c, code, step); c.again(); } }, name))),
    on.map(([code, name, follows]) => h('div', { className: 'note' }, h('strong', null, name), h('p', null, follows), at(code), asks[code]?.() || null)));
}
