// One visit, from setting out to signature. Every change is kept on the phone at once.
import { h, field, choose, day, moment, number } from './dom.js';
import * as store from './store.js';
import { seal, send } from './send.js';
import { judge, preCharge, runs, BAR, L_MIN, air, atTemperature } from './calc.js';
import { db, word, nice, installsOf, kindOf, unitWord, iso } from './data.js';
import { photoPart, signaturePart } from './photo.js';
import { commissioning, unanswered } from './commission.js';
import { cases, changed, registerWork } from './cases.js';
import { water, waterProblems, waterSent, waterWords } from './water.js';

const QUANTITIES = [['DELIVERED_FLOW', 'Delivered flow', ['LITRE_PER_MINUTE', 'LITRE_PER_DAY', 'LITRE_PER_SECOND']], ['BEAT_RATE', 'Beats', ['PER_MINUTE']],
  ['DRIVE_FLOW', 'Drive flow', ['LITRE_PER_MINUTE', 'LITRE_PER_SECOND']], ['WASTE_FLOW', 'Waste flow', ['LITRE_PER_MINUTE', 'LITRE_PER_SECOND']],
  ['DELIVERY_PRESSURE', 'Delivery pressure', ['BAR', 'KILOPASCAL']], ['PRE_CHARGE', 'Pre-charge', ['BAR', 'KILOPASCAL']], ['FALL', 'Fall', ['METRE', 'MILLIMETRE']],
  ['SOURCE_FLOW', 'Source', ['LITRE_PER_MINUTE', 'LITRE_PER_SECOND', 'LITRE_PER_DAY']], ['WATER_TEMPERATURE', 'Water temperature', ['CELSIUS']]];
const SI = { LITRE_PER_MINUTE: L_MIN, LITRE_PER_DAY: 1e-3 / 86400, LITRE_PER_SECOND: 1e-3, METRE: 1, MILLIMETRE: 1e-3, BAR: 1e5, KILOPASCAL: 1e3, PER_MINUTE: 1 / 60 };
const PRESSURE = ['CHECK_PRECHARGE', 'CHANGE_DELIVERY_RUBBER', 'CHANGE_WASTE_RUBBER', 'INSPECT_SEALS', 'OVERHAUL'];
const DANGERS = {
  PRESSURE: ['Stored pressure', 'Shut the drive side first, then the delivery. Release, and prove zero on a gauge before any joint is opened. Charge a vessel only empty of water and off pressure. Local codes and licensed practice come first.'],
  CHAMBER: ['Confined chamber', 'Never enter alone. Air it, test the air, have somebody outside who can call for help. Local rules for confined spaces come first.'],
  WATER: ['Drinking water', 'Disinfect only downstream of the isolated pump. Keep people and stock from drinking until it is flushed. Local health rules come first.'],
};

/** Reads what was typed, with comma or point; null if it is no number. */
export const parse = (text) => { const t = String(text ?? '').trim().replace(',', '.'); return /^-?\d+(\.\d+)?$/.test(t) ? Number(t) : null; };

/** What is wrong with a reading as typed, in words; nothing if it can be. */
function flaw(q, text) {
  const typed = String(text ?? '').trim();
  const value = parse(typed);
  return !typed ? '' : value === null ? `“${typed}” is no number.` : value < 0 && q !== 'WATER_TEMPERATURE' ? `“${typed}” is below zero.` : '';
}

export function newVisit(site, planned) {
  const asked = planned ? (planned.tasks || []).map((id) => db.data.asked.find((t) => t.id === id)).filter(Boolean)
    : db.data.tasks.filter((t) => db.installs.get(t.install)?.site === site.id);
  const installs = installsOf(site.id);
  const fresh = installs.length && installs.every((i) => !i.commissioned && i.known);
  const list = db.data.checklists.find((c) => c.model && installs.some((i) => (i.pumps || []).some((p) => p.modelId === c.model))) || db.data.checklists.find((c) => !c.model);
  return { id: crypto.randomUUID(), person: db.person.person, writer: db.person.name, visit: planned?.id || null, site: site.id, kind: planned?.kind || (fresh ? 'COMMISSIONING' : 'SERVICE'), on: iso(),
    startedAt: null, arrivedAt: null, leftAt: null, people: planned?.others || [], outcome: 'DONE', reason: null, note: '', nobodyThere: false, customerName: '',
    tasks: asked.map((t) => ({ task: t.id, install: t.install, pump: t.pump, kind: t.kind, outcome: null, note: '' })), readings: {}, findings: [], parts: [], photos: [], followUps: [],
    cautions: {}, checklist: list?.id || null, list: list || null, checks: {}, steps: [], water: {}, cases: [] };
}

let problems = [];
let live = null;

export async function visitPage(id) {
  // the draft in hand is newer than the one on its way into the store
  if (live?.id !== id) {
    problems = [];
    live = await store.get('drafts', id);
  }
  const d = live;
  if (!d) {
    return [h('h1', null, 'Visit'), h('p', null, 'This visit is finished or thrown away.'), h('a', { className: 'button', href: '#/out' }, 'Outbox')];
  }
  const site = db.sites.get(d.site) || { id: d.site, name: 'Site' };
  const saved = h('p', { className: 'soft', role: 'status', id: 'kept' }, 'Kept on this phone.');
  const save = async () => {
    try {
      await store.put('drafts', d);
      saved.textContent = 'Kept on this phone.';
    } catch (full) {
      saved.textContent = full.name === 'QuotaExceededError' ? 'The phone is full: the last change is not kept. Send what waits or make room.' : `Not kept: ${full.message}`;
    }
  };
  const again = async () => { await save(); dispatchEvent(new HashChangeEvent('hashchange')); };
  const c = { d, site, save, again, installs: installsOf(d.site) };
  return [h('h1', null, site.name), saved, problems.length ? h('div', { className: 'caution', role: 'alert' }, h('strong', null, 'Before it can be finished'), h('ul', null, problems.map((p) => h('li', null, p)))) : null,
    d.person === db.person?.person ? null : h('div', { className: 'caution' }, h('strong', null, `Begun by ${d.writer || 'another person'} on this phone`), 'It is sent as theirs. Begin a visit of your own for what you did.'),
    times(c), caution(c, 'CHAMBER', (site.hazards || []).some((z) => z.kind === 'CONFINED_SPACE')),
    usual(c), cases(c), tasks(c), d.kind === 'COMMISSIONING' ? commissioning(c, danger) : null, c.installs.map((i) => readings(c, i)), findings(c), parts(c), water(c, caution), photoPart(c), rest(c), end(c)];
}

function times(c) {
  const one = (key, word) => h('button', { 'aria-pressed': String(!!c.d[key]), onclick: () => { c.d[key] = c.d[key] ? null : new Date().toISOString(); c.again(); } }, c.d[key] ? `${word} ${moment(c.d[key]).slice(-5)}` : word);
  const kind = choose(db.words.kind, c.d.kind, (v) => { c.d.kind = v; c.again(); });
  return [h('div', { className: 'row three' }, one('startedAt', 'Set out'), one('arrivedAt', 'Arrived'), one('leftAt', 'Leaving')), field('What for', kind)];
}

export function danger(c, code, when) { return caution(c, code, when); }
function caution(c, code, when) {
  if (!when) {
    return null;
  }
  const [title, text] = DANGERS[code];
  return h('div', { className: 'caution' }, h('strong', null, title), text,
    c.d.cautions[code] ? h('p', null, '✓ Understood') : h('div', { className: 'row' }, h('button', { onclick: () => { c.d.cautions[code] = new Date().toISOString(); c.again(); } }, 'I have read this')));
}

function usual(c) {
  return h('div', { className: 'row' }, h('button', { 'aria-pressed': String(c.d.tasks.length > 0 && c.d.tasks.every((t) => t.outcome === 'DONE')), onclick: () => { c.d.tasks.forEach((t) => { if (!t.outcome) { Object.assign(t, { outcome: 'DONE', usual: true }); } }); c.d.usual = true; c.again(); } }, 'All as usual'));
}

function tasks(c) {
  if (!c.d.tasks.length) {
    return null;
  }
  const needs = c.d.tasks.some((t) => PRESSURE.includes(kindOf(t.kind)?.code));
  return [h('h2', null, 'Tasks'), caution(c, 'PRESSURE', needs), c.d.tasks.map((t) => {
    const name = `${kindOf(t.kind)?.name || 'Task'}${c.installs.length > 1 ? `, ${db.installs.get(t.install)?.name || ''}` : ''}`;
    return h('div', null, field(name, choose(db.words.workOutcome, t.outcome, (v) => { Object.assign(t, { outcome: v, usual: false }); c.again(); }, 'not answered')),
      c.d.cases?.includes('OWNER') ? h('div', { className: 'row' }, h('button', { 'aria-pressed': String(t.by === 'OWNER'), onclick: () => { Object.assign(t, t.by === 'OWNER' ? { by: null, outcome: null } : { by: 'OWNER', outcome: 'DONE' }); c.again(); } }, 'Owner did this')) : null,
      t.by === 'OWNER' ? field('About when, which part', h('input', { type: 'text', maxLength: 300, value: t.note || '', oninput: (e) => { t.note = e.target.value; c.save(); } }), 'about May; part not known') : null,
      t.outcome === 'COULD_NOT' ? field('Why', choose(db.words.reason, t.reason, (v) => { t.reason = v; c.save(); }, 'say why')) : null,
      t.outcome === 'INSPECTED_GOOD' ? field('Look again on', h('input', { type: 'date', value: t.lookAgainOn || '', oninput: (e) => { t.lookAgainOn = e.target.value || null; c.save(); } })) : null);
  })];
}

function readings(c, i) {
  const key = (q) => `${i.id}|${q}`;
  const say = h('div', { 'aria-live': 'polite' });
  const tell = () => {
    const si = {};
    QUANTITIES.forEach(([q]) => { const r = c.d.readings[key(q)]; const v = parse(r?.value); if (v !== null && !flaw(q, r.value) && SI[r.unit]) { si[q] = { si: v * SI[r.unit], u: r.u ? r.u * SI[r.unit] : undefined }; } });
    const told = changed(c.d) ? judge({ ...i, baseline: null }, c.site, null, si, c.d.on) : judge(i, c.site, db.data.expected[i.id], si, c.d.on);
    const r = c.d.readings[key('DELIVERED_FLOW')];
    say.replaceChildren(...(told.said.length ? [h('div', { className: told.zero ? 'caution' : 'note' }, told.said.map((s) => h('p', null, s)),
      told.zero ? h('div', { className: 'row' }, ['Float shut at the tank', 'Branch shut at the tank end', 'All open, still nothing'].map((why, n) => h('button', { 'aria-pressed': String(r.float === why), onclick: () => {
        r.float = why; r.notComparable = n < 2 ? why : null; c.again(); } }, why))) : null)] : []));
  };
  tell();
  const shown = (q, n) => n < 3 || c.d.more || c.d.readings[key(q)];
  return [h('h2', null, `Readings${c.installs.length > 1 ? `, ${i.name}` : ''}`), QUANTITIES.map(([q, name, units], n) => {
    if (!shown(q, n)) {
      return null;
    }
    const r = () => { c.d.readings[key(q)] ??= { value: '', unit: units[0], place: q === 'SOURCE_FLOW' ? 'SOURCE' : q === 'DELIVERED_FLOW' ? 'TANK' : 'PUMP' }; return c.d.readings[key(q)]; };
    const now = c.d.readings[key(q)];
    const last = db.data.readings.find((x) => x.install === i.id && x.quantity === q && x.comparable);
    const unit = choose(units.map((u) => [u, unitWord(u)]), now?.unit || units[0], (u) => { r().unit = u; c.save(); tell(); });
    unit.setAttribute('aria-label', `Unit of ${name}`);
    const input = h('input', { type: 'text', inputMode: 'decimal', autocomplete: 'off', value: now?.value || '', 'data-q': q, oninput: (e) => { const x = r(); Object.assign(x, { value: e.target.value, u: null, timed: false }); c.save(); look(); } });
    const box = field(name, input, last ? `last ${number(last.value)} ${unitWord(last.unit)} on ${day(last.on)}` : null);
    const wrap = h('span', { className: 'with' });
    input.replaceWith(wrap);
    wrap.append(input, unit);
    const mark = h('span', { className: 'wrong', role: 'status', id: `${input.id}w` });
    input.setAttribute('aria-describedby', [input.getAttribute('aria-describedby'), mark.id].filter(Boolean).join(' '));
    box.append(mark);
    const see = () => {
      // the decimals may still follow
      mark.textContent = flaw(q, input.value.replace(/[.,]$/, ''));
      input.setAttribute('aria-invalid', String(mark.textContent !== ''));
    };
    const look = () => { see(); tell(); };
    see();
    return [box, q.endsWith('_FLOW') ? bucket(c, r, input, unit, look, key(q)) : null, q === 'DELIVERED_FLOW' ? field('Measured at', choose([['TANK', 'the tank'], ['PUMP', 'the pump']], now?.place || 'TANK', (p) => { r().place = p; c.save(); })) : null];
  }), c.d.more ? null : h('button', { onclick: () => { c.d.more = true; c.again(); } }, 'More readings'), say, charge(c, i)];
}

// a watch that runs goes on when the page is drawn anew
const watches = new Map();
function bucket(c, r, input, unit, tell, key) {
  const box = h('details', null, h('summary', { className: 'button' }, 'Bucket and watch'));
  const out = h('p', { role: 'status' });
  const watch = h('p', { className: 'watch' }, '0.0 s');
  let begun = watches.get(key) || 0;
  let ticking;
  const tick = () => {
    if (!watch.isConnected && begun !== watches.get(key)) {
      clearInterval(ticking);
    }
    watch.textContent = `${((performance.now() - begun) / 1000).toFixed(1)} s`;
  };
  const b = () => { r().bucket ??= { litres: '10', seconds: [] }; return r().bucket; };
  // only a run writes the mean; what was typed since stays, whatever is drawn anew
  const sum = (write) => {
    const [litres, list] = [parse(b().litres), b().seconds];
    if (!(litres > 0) || !list.length) {
      out.textContent = '';
      return;
    }
    const m = runs(litres, list);
    out.textContent = `${list.length} ${list.length > 1 ? 'runs' : 'run'}: ${list.map((s) => s.toFixed(1)).join(', ')} s. Mean ${number(m.mean)} l/min${m.spread === null ? '' : `, spread ${number(m.spread, 2)} l/min`}.`;
    if (!write) {
      return;
    }
    Object.assign(r(), { value: String(Number(m.mean.toPrecision(4))), unit: 'LITRE_PER_MINUTE', u: m.u, timed: true });
    input.value = r().value;
    unit.value = 'LITRE_PER_MINUTE';
    c.save();
    tell();
  };
  const go = h('button', { className: 'primary', onclick: () => {
    if (begun) {
      b().seconds.push((performance.now() - begun) / 1000);
      clearInterval(ticking);
      begun = 0;
      watches.delete(key);
      go.textContent = 'Start again';
      sum(true);
    } else {
      begun = performance.now();
      watches.set(key, begun);
      go.textContent = 'Full';
      ticking = setInterval(tick, 100);
    }
  } }, begun ? 'Full' : 'Start');
  if (begun) {
    box.open = true;
    ticking = setInterval(tick, 100);
  }
  box.addEventListener('toggle', () => {
    if (box.open && box.children.length === 1) {
      box.append(field('Bucket, litres', h('input', { type: 'text', inputMode: 'decimal', value: b().litres, oninput: (e) => { b().litres = e.target.value; c.save(); sum(r().timed || !r().value); } })), watch,
        h('div', { className: 'row' }, go, h('button', { onclick: () => { b().seconds.pop(); c.save(); sum(r().timed); } }, 'Drop the last run')), out);
      sum(false);
    }
  });
  return box;
}

function charge(c, i) {
  const pump = (i.pumps || [])[0];
  if (!i.lift || !pump || pump.vessel !== 'BLADDER') {
    return null;
  }
  const told = preCharge(i.lift, 10, pump.bar ? pump.bar * BAR : Infinity);
  const out = h('p', { role: 'status' });
  const show = (t) => { out.textContent = told.charge === null ? told.why : `Set ${(atTemperature(told.charge, 10, t, air(c.site.alt || 0)) / BAR).toFixed(2)} bar on a vessel at ${t} °C: it is ${(told.charge / BAR).toFixed(2)} bar at 10 °C (${told.why}). Common practice, no standard gives it; the maker's figure comes first.`; };
  show(10);
  return h('details', null, h('summary', { className: 'button' }, 'What pre-charge?'), field('Vessel and gas, °C', h('input', { type: 'text', inputMode: 'decimal', value: '10', oninput: (e) => { const t = parse(e.target.value); if (t !== null) { show(t); } } })), out);
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

function findings(c) {
  return [h('h2', null, 'Findings'), c.d.findings.map((f, n) => {
    const known = db.data.causes.filter((x) => x.symptom === f.symptom);
    const typed = (key, label) => field(label, h('input', { type: 'text', value: f[key] || '', oninput: (e) => { f[key] = e.target.value; c.save(); } }));
    return h('div', null, field('What is wrong', choose(db.words.symptom, f.symptom, (v) => { f.symptom = v; suggest(f, '', ''); c.again(); }, 'choose')),
      known.length ? h('div', { role: 'group', 'aria-label': 'Likely causes, in the order to look' }, h('p', { className: 'soft' }, 'Likely causes, in the order to look:'), known.map((k) => h('div', { className: 'row' }, h('button', { 'aria-pressed': String(f.cause === k.cause), onclick: () => { suggest(f, k.cause, k.action); c.again(); } }, k.cause)))) : null,
      f.symptom ? [typed('cause', 'Cause'), typed('action', 'What was done')] : null, h('button', { onclick: () => { c.d.findings.splice(n, 1); c.again(); } }, 'Take it away'));
  }), h('div', { className: 'row' }, h('button', { onclick: () => { c.d.findings.push({ install: c.installs[0]?.id || null, symptom: null }); c.again(); } }, 'Add a finding'))];
}

function parts(c) {
  return [h('h2', null, 'Parts'), c.d.parts.map((p, n) => h('div', null,
    field('From the van', choose(db.data.van.map((v) => [v.id, `${v.name} (${number(v.quantity)} ${v.unit})`]), p.part, (v) => { p.part = v; c.again(); }, 'another part')),
    p.part ? null : field('Which part', h('input', { type: 'text', value: p.text || '', oninput: (e) => { p.text = e.target.value; c.save(); } })),
    h('div', { className: 'row' }, field('How many', h('input', { type: 'text', inputMode: 'decimal', value: p.quantity, oninput: (e) => { p.quantity = e.target.value; c.save(); } })),
      field('Batch', h('input', { type: 'text', value: p.batch || '', oninput: (e) => { p.batch = e.target.value; c.save(); } }))),
    h('button', { onclick: () => { c.d.parts.splice(n, 1); c.again(); } }, 'Take it away'))),
  c.installs.length ? h('div', { className: 'row' }, h('button', { onclick: () => { c.d.parts.push({ install: c.installs[0].id, part: null, quantity: '1' }); c.again(); } }, 'Add a part')) : null];
}

function rest(c) {
  const { d } = c;
  return [h('h2', null, 'Notes'), field('What the next one should know', h('textarea', { 'data-q': 'note', value: d.note, oninput: (e) => { d.note = e.target.value; c.save(); } })),
    d.followUps.map((f, n) => h('div', null, field('Left to do', h('input', { type: 'text', value: f.text, oninput: (e) => { f.text = e.target.value; c.save(); } })),
      field('By', h('input', { type: 'date', value: f.dueOn || '', oninput: (e) => { f.dueOn = e.target.value || null; c.save(); } })),
      h('label', { className: 'tick' }, h('input', { type: 'checkbox', checked: f.promised, onchange: (e) => { f.promised = e.target.checked; c.save(); } }), 'Promised to the customer'),
      h('button', { onclick: () => { d.followUps.splice(n, 1); c.again(); } }, 'Take it away'))),
    h('div', { className: 'row' }, h('button', { onclick: () => { d.followUps.push({ text: '', dueOn: null, promised: false }); c.again(); } }, 'Something left to do')),
    h('h2', null, 'Customer'), h('div', { className: 'row' }, h('button', { 'aria-pressed': String(d.nobodyThere), onclick: () => { d.nobodyThere = !d.nobodyThere; if (d.nobodyThere) { d.customerName = ''; } c.again(); } }, 'Nobody there')),
    d.nobodyThere ? null : [field('Name', h('input', { type: 'text', autocomplete: 'off', value: d.customerName, oninput: (e) => { d.customerName = e.target.value; c.save(); } })), signaturePart(c)]];
}

function end(c) {
  const { d } = c;
  return [h('h2', null, 'How it went'), field('Visit', choose([['DONE', 'Done'], ['PARTLY', 'Partly done'], ['COULD_NOT', 'Could not be done']], d.outcome, (v) => { d.outcome = v; c.again(); })),
    d.outcome === 'DONE' ? null : field('Why', choose(db.words.reason, d.reason, (v) => { d.reason = v; c.save(); }, 'say why')),
    h('div', { className: 'row' }, h('button', { className: 'primary', id: 'finish', onclick: () => complete(c) }, 'Finish and send')),
    d.person === db.person?.person ? h('div', { className: 'row' }, h('button', { onclick: () => throwAway(d) }, 'Throw this visit away')) : null];
}

/** What is written down in a visit, in words; the times are apart. */
function wrote(d) {
  const some = (n, one, many = `${one}s`) => n > 0 && `${n} ${n > 1 ? many : one}`;
  const filled = (x) => Object.values(x).some((v) => v === true || String(v ?? '').trim());
  return [some(d.tasks.filter((t) => t.outcome).length, 'answered task'), some(Object.values(d.readings).filter((r) => String(r.value).trim()).length, 'reading'), some(d.findings.length, 'finding'), some(d.parts.length, 'part'),
    filled(d.water) && 'water and hygiene', some(d.photos.filter((id) => id !== d.signature).length, 'photo'), d.note.trim() && 'the note', some(d.followUps.length, 'thing left to do', 'things left to do'),
    d.cases?.length && 'what came up', (d.steps.length || Object.keys(d.checks).length) && 'the commissioning', (d.nobodyThere || d.customerName.trim()) && 'the customer', d.signature && 'the signature', d.outcome !== 'DONE' && 'how it went'].filter(Boolean);
}

async function throwAway(d) {
  const lost = [...wrote(d), (d.startedAt || d.arrivedAt || d.leftAt) && 'the times'].filter(Boolean);
  if (lost.length && !confirm(`Throw this visit away? This is lost for good: ${lost.join(', ')}.`)) {
    return;
  }
  await store.discard(d);
  watches.clear();
  live = null;
  location.hash = '#/';
}

/** What must be put right first; the server checks the same again. */
function check(c) {
  const { d } = c;
  const wrong = [];
  if (d.outcome === 'COULD_NOT' && !d.reason) {
    wrong.push('Say why the visit could not be done.');
  }
  for (const [key, r] of Object.entries(d.readings)) {
    const q = key.split('|')[1];
    const name = QUANTITIES.find(([k]) => k === q)[1];
    const wrongly = flaw(q, r.value);
    if (wrongly) {
      wrong.push(`${name}: ${wrongly}`);
    }
    const beat = parse(d.readings[`${key.split('|')[0]}|BEAT_RATE`]?.value);
    if (q === 'DELIVERED_FLOW' && parse(r.value) === 0 && beat > 0 && !r.float) {
      wrong.push('Nothing arrives, but the pump beats: say whether a float or branch is shut at the tank end.');
    }
  }
  d.tasks.filter((t) => t.outcome === 'COULD_NOT' && !t.reason).forEach((t) => wrong.push(`${kindOf(t.kind)?.name}: say why it could not be done.`));
  if (d.tasks.some((t) => ['DONE', 'INSPECTED_GOOD'].includes(t.outcome) && t.by !== 'OWNER' && PRESSURE.includes(kindOf(t.kind)?.code)) && !d.cautions.PRESSURE) {
    wrong.push('Read the caution about stored pressure.');
  }
  if (d.arrivedAt && (c.site.hazards || []).some((z) => z.kind === 'CONFINED_SPACE') && !d.cautions.CHAMBER) {
    wrong.push('Read the caution about the confined chamber.');
  }
  wrong.push(...waterProblems(d));
  d.parts.filter((p) => (!p.part && !p.text?.trim()) || !(parse(p.quantity) > 0)).forEach(() => wrong.push('A part needs its name and how many.'));
  d.followUps.filter((f) => !f.text.trim()).forEach(() => wrong.push('Say what is left to do.'));
  return d.kind === 'COMMISSIONING' && d.outcome === 'DONE' ? wrong.concat(unanswered(d)) : wrong;
}

/** The visit as it is sent; the draft rides along so that it can be mended. */
function written(d) {
  const notes = [d.note.trim(), waterWords(d)].filter(Boolean);
  return { v: 1, id: d.id, visit: d.visit, site: d.site, kind: d.kind, on: d.on, startedAt: d.startedAt, arrivedAt: d.arrivedAt, leftAt: d.leftAt, people: d.people, outcome: d.outcome,
    reason: d.outcome === 'DONE' ? null : d.reason, note: notes.join('\n') || null, nobodyThere: d.nobodyThere, customerName: d.customerName.trim() || null,
    works: d.tasks.filter((t) => t.outcome).map(({ task, install, pump, kind, outcome, reason, lookAgainOn, by, note }) => ({ task, install, pump, kind, outcome, reason: outcome === 'COULD_NOT' ? reason : null, lookAgainOn: outcome === 'INSPECTED_GOOD' ? lookAgainOn || null : null, by: by || 'US', note: note || null })),
    readings: Object.entries(d.readings).filter(([, r]) => parse(r.value) !== null).map(([key, r]) => ({ install: key.split('|')[0], pump: null, quantity: key.split('|')[1], place: r.place, value: parse(r.value), unit: r.unit, asRead: true, notComparable: r.notComparable || changed(d) })),
    findings: d.findings.filter((f) => f.symptom).map(({ install, symptom, cause, action }) => ({ install, symptom, cause: cause || null, action: action || null })),
    parts: d.parts.map((p) => ({ install: p.install, part: p.part, text: p.part ? null : p.text, quantity: parse(p.quantity), batch: p.batch || null })),
    followUps: d.followUps.concat(registerWork(d)), water: waterSent(d), photos: d.photos.length, checklist: d.kind === 'COMMISSIONING' ? d.checklist : null, checks: Object.entries(d.checks).map(([code, x]) => ({ code, done: !!x.done, why: x.why || null })),
    steps: d.steps, dryFlow: d.dryFlow || null, dryFrom: d.dryFrom || null, dryUntil: d.dryUntil || null, leftSetting: d.leftSetting?.trim() || null, cautions: Object.keys(d.cautions), draft: d };
}

let finishing = false;
async function complete(c) {
  if (finishing) {
    return;
  }
  if (await store.get('outbox', c.d.id)) {
    // finished already, in another tab
    await store.remove('drafts', c.d.id);
    live = null;
    location.hash = '#/out';
    return;
  }
  problems = check(c);
  if (problems.length) {
    await c.again();
    scrollTo(0, 0);
    return;
  }
  if (!wrote(c.d).length && !confirm('Nothing is written down for this visit. Finish and send it all the same?')) {
    return;
  }
  finishing = true;
  try {
    c.d.leftAt ??= c.d.arrivedAt ? new Date().toISOString() : null;
    await c.save();
    await store.finish(await seal(written(c.d), c.d.person, c.d.photos));
    live = null;
  } finally {
    finishing = false;
  }
  location.hash = '#/out';
  send(true);
}
