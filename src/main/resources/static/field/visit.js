// One visit, from setting out to signature. Every change is kept on the phone at once.
import { h, field, choose, moment } from './dom.js';
import * as store from './store.js';
import { seal, send } from './send.js';
import { db, installsOf, iso, word } from './data.js';
import { photoPart, signaturePart } from './photo.js';
import { commissioning, likely, listFor, measured } from './commission.js';
import { cases } from './cases.js';
import { water } from './water.js';
import { caution } from './caution.js';
import { readings, unusual } from './readings.js';
import { findings, parts, tasks } from './found.js';
import { check, loose, written, wrote } from './finish.js';
import { fresh, keyed, merge } from './merge.js';

export function newVisit(site, planned) {
  const asked = planned ? (planned.tasks || []).map((id) => db.data.asked.find((t) => t.id === id)).filter(Boolean)
    : db.data.tasks.filter((t) => db.installs.get(t.install)?.site === site.id);
  const installs = installsOf(site.id);
  const fresh = installs.length && installs.every((i) => !i.commissioned && i.known);
  const install = planned?.install || likely(installs);
  const list = listFor(install ? installs.filter((i) => i.id === install) : installs);
  return { id: crypto.randomUUID(), person: db.person.person, writer: db.person.name, visit: planned?.id || null, site: site.id, kind: planned?.kind || (fresh ? 'COMMISSIONING' : 'SERVICE'), on: iso(),
    startedAt: null, arrivedAt: null, leftAt: null, people: planned?.others || [], outcome: 'DONE', reason: null, note: '', nobodyThere: false, customerName: '',
    tasks: asked.map((t) => ({ task: t.id, install: t.install, pump: t.pump, kind: t.kind, outcome: null, note: '' })), readings: {}, findings: [], parts: [], photos: [], followUps: [],
    cautions: {}, install, checklist: list?.id || null, list, checks: {}, steps: [], water: {}, cases: [] };
}

/** What was said when the visit was to be finished; loose ends may stay open. */
let problems = [];
let ends = [];
let live = null;
let writes = Promise.resolve();
let full = false;
/** Whether all that was typed is kept. */
export const settled = async () => { await writes; return !full; };
/** Drafts as they last stood in the store. */
const bases = new Map();
const copy = (d) => JSON.parse(JSON.stringify(d));
const placed = (stored) => keyed(stored, (n) => `at ${n}`);
const redraw = () => dispatchEvent(new HashChangeEvent('hashchange'));
// an old browser without it asks when it comes to the front, and at each change
const windows = window.BroadcastChannel ? new BroadcastChannel('ramkeeper-visits') : { postMessage() {} };
const look = async () => { if (live) { await takeOn(live); } };
windows.onmessage = (e) => { if (e.data === live?.id) { look(); } };
document.addEventListener('visibilitychange', () => { if (!document.hidden) { look(); } });

/** What another window wrote joins the draft in hand; true if it wrote something. */
function join(d, stored) {
  const also = [];
  const news = JSON.stringify(placed(stored)) !== JSON.stringify(bases.get(d.id));
  if (news) {
    merge(bases.get(d.id), stored, d, also);
    d.also = [...new Set([...(d.also || []), ...also])];
  }
  return news;
}

async function takeOn(d) {
  const stored = await store.get('drafts', d.id);
  if (live !== d) {
    return;
  }
  if (!stored) {
    live = null;
    redraw();
  } else if (join(d, stored)) {
    bases.set(d.id, copy(stored));
    redraw();
  }
}

/** What is written into a visit that another window finished or threw away begins a visit of its own. */
async function gone(d) {
  if (live !== d) {
    return;
  }
  live = null;
  const late = fresh(bases.get(d.id), d);
  if (!late.length) {
    redraw();
    return;
  }
  const more = { ...newVisit(db.sites.get(d.site) || { id: d.site }, null), person: d.person, writer: d.writer, kind: d.kind, on: d.on, tasks: [], note: late.join('\n') };
  await store.put('drafts', more);
  location.hash = `#/visit/${more.id}`;
}

/** Writes the draft in hand; what another window wrote meanwhile stays. */
async function keep(d) {
  let written = null;
  let news = false;
  await store.change(d.id, (stored) => {
    if (!stored) {
      return null;
    }
    keyed(d, () => crypto.randomUUID());
    news = join(d, stored);
    written = copy(d);
    return written;
  });
  if (!written) {
    await gone(d);
    return;
  }
  bases.set(d.id, written);
  windows.postMessage(d.id);
  if (news) {
    redraw();
  }
}

export async function visitPage(id) {
  // the draft in hand is newer than the one on its way into the store
  if (live?.id !== id) {
    problems = ends = [];
    live = await store.get('drafts', id) || null;
    if (live) {
      bases.set(id, copy(placed(live)));
    }
  }
  const d = live;
  if (!d) {
    return [h('h1', null, 'Visit'), h('p', null, 'This visit is finished or thrown away.'), h('a', { className: 'button', href: '#/out' }, 'Outbox')];
  }
  const site = db.sites.get(d.site) || { id: d.site, name: 'Site' };
  const saved = h('p', { className: 'soft', role: 'status', id: 'kept' }, 'Kept on this phone.');
  const save = async () => {
    const writing = keep(d);
    writes = writes.then(() => writing).then(() => { full = false; }, () => { full = true; });
    try {
      await writing;
      saved.textContent = 'Kept on this phone.';
    } catch (e) {
      saved.textContent = e.name === 'QuotaExceededError' ? 'The phone is full: the last change is not kept. Send what waits or make room.' : `Not kept: ${e.message}`;
    }
  };
  const again = async () => { await save(); redraw(); };
  const c = { d, site, save, again, installs: installsOf(d.site), cautioned: new Set() };
  return [h('h1', null, site.name), saved, told(c),
    d.person === db.person?.person ? null : h('div', { className: 'caution' }, h('strong', null, `Begun by ${d.writer || 'another person'} on this phone`), 'It is sent as theirs. Begin a visit of your own for what you did.'),
    d.also?.length ? h('div', { className: 'caution' }, h('strong', null, 'Typed in another window as well'), d.also.map((text) => h('p', { className: 'lines' }, text)), 'It goes along with the note.') : null,
    times(c), caution(c, 'CHAMBER', (site.hazards || []).some((z) => z.kind === 'CONFINED_SPACE')),
    usual(c), cases(c), tasks(c), d.kind === 'COMMISSIONING' ? commissioning(c, caution) : null, measured(c).map((i) => readings(c, i)), measured(c).length < c.installs.length ? h('button', { onclick: () => { d.others = true; c.again(); } }, 'Readings of the other installs too') : null, findings(c), parts(c), water(c, caution), photoPart(c), rest(c), end(c)];
}

/** What stands against finishing. What is only a loose end does not keep anybody: it goes along in words. */
function told(c) {
  // what was mended since is no longer asked
  if (problems.length) {
    problems = check(c);
  }
  ends = ends.length ? loose(c) : ends;
  if (!problems.length && !ends.length) {
    return null;
  }
  return h('div', { className: 'caution', role: 'alert' }, h('strong', null, problems.length ? 'Before it can be finished' : 'Look at this once more'), h('ul', null, [...problems, ...ends.map((e) => e.say)].map((p) => h('li', null, p))),
    problems.length ? null : [h('p', null, 'Or finish as it is: what cannot be read goes to the office in your words, and what was not acknowledged or confirmed is recorded so.'),
      h('div', { className: 'row' }, h('button', { onclick: () => complete(c, ends.map((e) => e.say)) }, 'Finish all the same'))]);
}

function times(c) {
  const one = (key, word) => h('button', { 'aria-pressed': String(!!c.d[key]), onclick: () => { c.d[key] = c.d[key] ? null : new Date().toISOString(); c.again(); } }, c.d[key] ? `${word} ${moment(c.d[key]).slice(-5)}` : word);
  const kind = choose(db.words.kind, c.d.kind, (v) => { c.d.kind = v; c.again(); });
  return [h('div', { className: 'row three' }, one('startedAt', 'Set out'), one('arrivedAt', 'Arrived'), one('leftAt', 'Leaving')), field('What for', kind)];
}

/** What was written down beside “all as usual” and is not: said, and left to the person. */
function unlike(c) {
  const { d } = c;
  const found = d.findings.filter((f) => f.symptom).map((f) => word('symptom', f.symptom));
  const read = c.installs.flatMap((i) => unusual(c, i).map((name) => (c.installs.length > 1 ? `${name} of ${i.name}` : name)));
  return [found.length && `a finding is written down (${found.join(', ')})`, read.length && `a reading is not as usual (${read.join(', ')})`].filter(Boolean).join(', and ');
}

function usual(c) {
  const said = h('div', { 'aria-live': 'polite' });
  // said anew as readings are typed
  c.look = () => {
    const but = c.d.usual && c.d.tasks.every((t) => t.outcome === 'DONE') ? unlike(c) : '';
    const text = but && `“All as usual” is tapped, but ${but}. Both go to the office as they stand: is each task really done as usual?`;
    if (said.textContent !== text) {
      said.replaceChildren(...(text ? [h('p', { className: 'note' }, text)] : []));
    }
  };
  c.look();
  return [h('div', { className: 'row' }, h('button', { 'aria-pressed': String(!!c.d.usual && c.d.tasks.length > 0 && c.d.tasks.every((t) => t.outcome === 'DONE')), onclick: () => { c.d.tasks.forEach((t) => { if (!t.outcome) { Object.assign(t, { outcome: 'DONE', usual: true }); } }); c.d.usual = true; c.again(); } }, 'All as usual')), said];
}

function rest(c) {
  const { d } = c;
  return [h('h2', null, 'Notes'), field('What the next one should know', h('textarea', { 'data-q': 'note', value: d.note, oninput: (e) => { d.note = e.target.value; c.save(); } })),
    d.followUps.map((f, n) => h('div', null, field('Left to do', h('textarea', { rows: 2, value: f.text, oninput: (e) => { f.text = e.target.value; c.save(); } })),
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

async function throwAway(d) {
  const lost = [...wrote(d), (d.startedAt || d.arrivedAt || d.leftAt) && 'the times'].filter(Boolean);
  if (lost.length && !confirm(`Throw this visit away? This is lost for good: ${lost.join(', ')}.`)) {
    return;
  }
  await store.discard(d);
  live = null;
  windows.postMessage(d.id);
  location.hash = '#/';
}

let finishing = false;
async function complete(c, known = []) {
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
  await look();
  if (live !== c.d) {
    return;
  }
  problems = check(c);
  ends = loose(c);
  if (problems.length || ends.some((e) => !known.includes(e.say))) {
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
    if (live !== c.d) {
      return;
    }
    await store.finish(await seal(written(c), c.d.person, c.d.photos));
    live = null;
    windows.postMessage(c.d.id);
  } finally {
    finishing = false;
  }
  location.hash = '#/out';
  send(true);
}
