// The field pages: today, sites, one site, what waits to be sent, what is on the phone. All drawn from what is on the phone.
import { h, field, day, moment, number } from './dom.js';
import * as store from './store.js';
import { send, fetchBundle, onChange, status, pin, writing } from './send.js';
import { keysHere, picture, takePictures } from './pictures.js';
import { way, compass } from './calc.js';
import { visitPage, newVisit, settled } from './visit.js';
import { newer, renew, onNewer } from './edition.js';
import { keepPlace } from './place.js';
import { changes, meet, news } from './news.js';
import { db, load, word, nice, of, installsOf, kindOf, partName, unitWord, iso } from './data.js';

const DAY_MS = 86400000;
const main = document.getElementById('main');
/** Whether the server was asked since this page opened: before that nobody knows who is signed in. */
let asked = false;
function today() {
  if (!db.data) {
    if (!asked) {
      return [h('h1', null, 'Today'), h('p', { className: 'soft', role: 'status' }, 'One moment: looking for the firm’s sites …')];
    }
    return [h('h1', null, 'Today'), db.person ? null : h('p', null, 'Nobody has signed in on this phone yet.'),
      h('p', null, 'Nothing is on this phone yet. It takes all sites along while there is a signal.'),
      h('p', null, h('a', { className: 'button', href: '/sign-in?next=/field' }, 'Sign in')),
      h('button', { className: 'primary', onclick: refresh }, 'Take all sites along')];
  }
  const days = [...new Set(db.data.planned.map((v) => v.on))];
  return [h('h1', null, 'Your visits'), warning(), changes(wasFinished, draw),
    days.length ? days.map((on) => [h('h2', null, on === iso() ? `Today, ${day(on)}` : day(on)),
      h('ul', { className: 'list' }, db.data.planned.filter((v) => v.on === on).map(stop))]) : h('p', null, 'No visits are planned for you in the next 7 days.'),
    h('h2', null, 'Not finished'), draftsList()];
}

function stop(v) {
  const site = db.sites.get(v.site);
  return h('li', null, h('a', { href: `#/site/${v.site}` }, `${v.from ? `${v.from} ` : ''}${site?.name || 'Site'}`), wasFinished(v.id) ? null : news(v),
    h('p', null, `${word('kind', v.kind)}, ${v.minutes} min${v.ring ? '. The office must ring first' : ''}`), rang(v.site),
    v.tasks ? h('p', null, h('strong', null, 'Asked: '), askedWords(v)) : null, v.note ? h('p', { className: 'lines' }, v.note) : null,
    of('followUps', v.site).filter((f) => f.promised).map((f) => h('p', null, h('strong', null, 'Promised: '), f.text, f.due ? `, by ${day(f.due)}` : '')),
    finished(v) || h('div', { className: 'row' }, h('button', { className: 'primary', onclick: () => begin(site, v) }, 'Open the visit')));
}

/** What somebody at the site rang about and nobody has closed. */
const rang = (site) => of('calls', site).map((c) => h('div', { className: 'caution' }, h('strong', null, `Somebody rang: ${word('symptom', c.symptom)}${c.install ? `, ${c.install}` : ''}`),
  [c.people && 'People without water.', c.stock && 'Stock without water.', c.dry && `Water lasts until ${moment(Date.parse(c.dry))}.`, c.promised && `Promised by ${moment(Date.parse(c.promised))}.`].filter(Boolean).join(' '),
  c.advice ? h('div', { className: 'lines' }, `Told them: ${c.advice}`) : null, c.note ? h('div', { className: 'lines' }, c.note) : null));

/** The tasks that a visit asks for, in words; of several installs each by its name. */
function askedWords(v) {
  const tasks = v.tasks.map((id) => db.data.asked.find((t) => t.id === id)).filter(Boolean);
  const name = (t) => kindOf(t.kind)?.name || 'Task';
  const words = (list) => [...new Set(list.map(name))].map((n) => { const count = list.filter((t) => name(t) === n).length; return count > 1 ? `${n} (${count})` : n; }).join(', ');
  const at = [...new Set(tasks.map((t) => t.install))];
  return at.length < 2 ? words(tasks) : at.map((i) => `${db.installs.get(i)?.name || 'Install'}: ${words(tasks.filter((t) => t.install === i))}`).join('. ');
}

/** When a task is due, and how late it is. */
function dueWords(t) {
  const name = kindOf(t.kind)?.name || 'Task';
  if (!t.due) {
    return `${name}: nobody knows when it was last done`;
  }
  const days = Math.round((new Date(iso()) - new Date(t.due)) / DAY_MS);
  const late = `${days} ${days === 1 ? 'day' : 'days'} late`;
  return [`${name}: ${day(t.due)}`, days <= 0 ? null : iso() > (t.until || t.due) ? [' ', h('span', { className: 'state late' }, `overdue, ${late}`)] : `, ${late}, fine until ${day(t.until)}`];
}

let cleared = [];
const wasFinished = (visit) => [...outbox, ...cleared].some((x) => x.visit === visit);
/** How a planned visit that was finished on this phone stands; nothing while it is to be done, or was planned anew since it was sent. */
function finished(v) {
  const e = [...outbox, ...cleared].filter((x) => x.visit === v.id).sort((a, b) => b.at - a.at)[0];
  if (!e || (e.state === 'SENT' && e.result !== 'HELD' && db.at > e.sentAt)) {
    return null;
  }
  return h('p', null, h('span', { className: `state ${e.state === 'SENT' ? 'sent' : ''}` }, e.state === 'WAITING' ? 'finished, not yet sent' : WORDS[e.state]),
    e.state === 'SENT' ? null : [' ', h('a', { className: 'button', href: '#/out' }, 'Outbox')]);
}

/** Leaves the outbox; that the visit was sent is remembered while it is planned here. */
async function clearEntry({ id, visit, at, sentAt, result }) {
  const still = cleared.filter((x) => db.data?.planned.some((v) => v.id === x.visit));
  await store.put('kv', visit ? [...still, { visit, at, sentAt, result, state: 'SENT' }] : still, 'cleared');
  await store.remove('outbox', id);
  draw();
}

const drafts = [];
function draftsList() {
  return drafts.length ? h('ul', { className: 'list' }, drafts.map((d) => h('li', null,
    h('a', { href: `#/visit/${d.id}` }, `${db.sites.get(d.site)?.name || 'Site'}, ${day(d.on)}`),
    d.person === db.person?.person ? null : h('p', { className: 'soft' }, `begun by ${d.writer || 'another person'} on this phone`)))) : h('p', { className: 'soft' }, 'None.');
}

async function begin(site, planned) {
  const open = drafts.find((d) => d.site === site.id && d.visit === (planned?.id || null) && d.person === db.person.person);
  const draft = open || newVisit(site, planned, db);
  if (!open) {
    await store.put('drafts', draft);
  }
  location.hash = `#/visit/${draft.id}`;
}

function sites() {
  const list = h('ul', { className: 'list' });
  const fill = (text) => {
    const serials = (s) => installsOf(s.id).flatMap((i) => (i.pumps || []).map((p) => p.serial));
    const found = (db.data?.sites || []).filter((s) => [s.name, s.locality, s.ref, ...(s.people || []).flatMap((p) => [p.name, p.phone]), ...(text ? serials(s) : [])].join(' ').toLowerCase().includes(text.trim().toLowerCase()));
    list.replaceChildren(...found.slice(0, 60).map((s) => h('li', null, h('a', { href: `#/site/${s.id}` }, s.name), h('span', { className: 'soft' }, s.locality || ''))));
    if (!found.length) {
      list.append(h('li', { className: 'soft' }, db.data ? 'No site on this phone has that in its name, place, reference, people, telephone or pump serial.' : 'No sites are on this phone yet.'));
    }
    if (found.length > 60) {
      list.append(h('li', { className: 'soft' }, `${found.length - 60} more: type more of the name.`));
    }
  };
  fill('');
  return [h('h1', null, 'Sites'), field('Name, place, person, serial', h('input', { type: 'search', autocomplete: 'off', oninput: (e) => fill(e.target.value) })), list];
}

function site(id) {
  const s = db.sites.get(id);
  if (!s) {
    return [h('h1', null, 'Site'), h('p', null, 'This site is not on the phone.')];
  }
  const closed = (s.closed || []).find((c) => iso() >= c.from && iso() <= c.until);
  const planned = db.data.planned.filter((v) => v.site === id);
  return [h('h1', null, s.name), s.locality ? h('p', { className: 'soft' }, s.locality) : null,
    closed ? h('div', { className: 'caution' }, h('strong', null, `Closed until ${day(closed.until)}`), closed.reason || '') : null,
    rang(id), s.hazards ? h('div', { className: 'caution' }, h('strong', null, 'Take care'), s.hazards.map((z) => h('div', null, `${nice(z.kind)}${z.text ? `: ${z.text}` : ''}`))) : null,
    s.biosecurity && s.biosecurity !== 'CLEAN' ? h('div', { className: 'caution' }, h('strong', null, `Catchment ${s.catchment}: ${nice(s.biosecurity)}`), 'Clean and dry boots and tools before the next catchment.') : null,
    h('div', { className: 'row' }, planned.length ? planned.map((v) => finished(v) || h('button', { className: 'primary', onclick: () => begin(s, v) }, `Visit of ${day(v.on)}`)) : null,
      h('button', { onclick: () => begin(s, null) }, 'Visit without a plan')),
    h('h2', null, 'Way in'), album(id, ['GATE']), h('p', { className: 'lines' }, s.wayIn || 'Nothing is written down.'),
    s.gate ? h('p', { className: 'lines' }, `Gate: ${s.gate}`) : null, s.walk ? h('p', null, `${s.walk} min on foot`) : null, wayThere(s),
    (s.windows || []).length ? h('p', null, `Open: ${s.windows.map(([d, a, b]) => `${['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'][d - 1]} ${a}–${b}`).join(', ')}`) : null,
    (s.people || []).map((p) => h('p', null, `${nice(p.part)}: ${p.name} `, p.phone ? h('a', { className: 'button', href: `tel:${p.phone.replace(/[^+0-9]/g, '')}` }, p.phone) : null)),
    installsOf(id).map(installPart), album(id, ['DRAWING', 'PLACE', 'VISIT'], 'Photos and drawings'), pinButton(id),
    of('water', id).length ? [h('h2', null, 'Water and hygiene'), plain(of('water', id), sampleWords)] : null,
    h('h2', null, 'Left to do'), plain(of('followUps', id), (f) => `${f.text}${f.due ? `, by ${day(f.due)}` : ''}${f.promised ? ' (promised)' : ''}`),
    h('h2', null, 'Last visits'), plain(of('visits', id), (v) => `${day(v.on)}: ${word('kind', v.kind)}${v.who ? `, ${v.who}` : ''}${v.done ? `. Done: ${v.done}` : ''}${v.note ? `. ${v.note}` : ''}`)];
}

const sampleWords = (w) => [[day(w.on), w.reference, w.place, w.laboratory].filter(Boolean).join(', '),
  ...(w.results || []).map((r) => `${r.parameter}: ${r.value}${r.unit ? ` ${r.unit}` : ''}`), w.remark,
  w.product && `Disinfected: ${[w.product, w.strength, w.minutes !== null && `${w.minutes} min`, w.flushed && `flushed ${w.flushed}`].filter(Boolean).join(', ')}`,
  w.next && `Next sample ${day(w.next)}`].filter(Boolean).join('\n');

const SHOWS = { GATE: 'Gate, way in', DRAWING: 'Drawing', PLACE: 'The place', VISIT: 'Visit' };
/** Photos that came along; what has not come yet is said. */
function album(site, kinds, title) {
  const wanted = of('pictures', site).filter((p) => kinds.includes(p.kind));
  if (!wanted.length) {
    return null;
  }
  const list = h('div', { className: 'album' });
  const said = h('p', { className: 'soft' });
  const show = async () => {
    const found = (await Promise.all(wanted.map(async (p) => ({ ...p, blob: await picture(p.key) })))).filter((p) => p.blob);
    list.replaceChildren(...found.map((p) => {
      const words = `${SHOWS[p.kind]}${p.caption ? `: ${p.caption}` : ''}`;
      const src = URL.createObjectURL(p.blob);
      const img = h('img', { src, alt: words, onload: () => URL.revokeObjectURL(src) });
      const figure = h('figure', null, h('button', { className: 'plain', 'aria-label': `${words}: larger or smaller`, onclick: () => figure.classList.toggle('wide') }, img), h('figcaption', null, `${words}, ${day(p.on)}`));
      return figure;
    }));
    const missing = wanted.length - found.length;
    said.textContent = missing ? `${missing} of ${wanted.length} ${missing > 1 ? 'are' : 'is'} not on the phone yet.` : '';
  };
  show();
  return [title ? h('h2', null, title) : null, list, said];
}

function pinButton(id) {
  const said = h('p', { role: 'status' });
  const pinned = db.data.pins.some((p) => p.site === id);
  return [h('div', { className: 'row' }, h('button', { onclick: async (e) => {
    e.target.disabled = true;
    const why = await pin(id, !pinned).catch(() => 'No signal: pin it where there is one.');
    if (why) {
      e.target.disabled = false;
      said.textContent = why;
    } else {
      await refresh();
    }
  } }, pinned ? 'Unpin: its photos stay behind' : 'Pin: its photos come along')), said];
}

const plain = (list, text) => (list.length ? h('ul', { className: 'list' }, list.map((x) => h('li', { className: 'lines' }, text(x)))) : h('p', { className: 'soft' }, 'Nothing.'));

function installPart(i) {
  const due = db.data.tasks.filter((t) => t.install === i.id);
  const read = db.data.readings.filter((r) => r.install === i.id);
  return [h('h2', null, i.name), h('dl', null, fact('State', i.state ? nice(i.state) : i.commissioned ? `commissioned ${day(i.commissioned)}` : i.known ? 'not commissioned' : 'not known'), fact('Fall', i.fall && `${number(i.fall)} m`), fact('Lift', i.lift && `${number(i.lift)} m`),
    fact('Setting', i.setting), fact('Pump', (i.pumps || []).map((p) => `${p.model || 'model not known'} ${p.serial || ''}${p.loan ? ' (on loan)' : ''}`).join(', ')),
    fact('Baseline', i.baseline && [i.baseline.drive && `drive ${number(i.baseline.drive * 60000)} l/min`, i.baseline.delivered && `delivered ${number(i.baseline.delivered * 60000)} l/min`, i.baseline.beat && `${number(i.baseline.beat * 60)} beats/min`].filter(Boolean).join(', '))),
  lines(i), h('h3', null, 'Due'), plain(due, dueWords),
  h('h3', null, 'Last readings'), plain(read, (r) => `${nice(r.quantity)} at ${nice(r.place)}: ${number(r.value)} ${unitWord(r.unit)}, ${day(r.on)}${r.comparable ? '' : ' (not comparable)'}`)];
}
/** The works as built: where to look for a joint, an air valve, a drain. */
function lines(i) {
  const all = db.data.lines.filter((e) => e.install === i.id);
  const where = (p) => (p.lat === null ? null : wayThere(p));
  const text = (p) => [nice(p.kind), p.at !== null && `${number(p.at, 4)} m along`, p.level !== null && `level ${number(p.level, 4)} m`, p.note].filter(Boolean).join(', ');
  return all.length ? h('details', null, h('summary', { className: 'button' }, 'As built'), all.map((e) => [h('h3', null, `${nice(e.kind)}: ${e.name}`), e.note ? h('p', { className: 'lines' }, e.note) : null, where(e),
    e.points ? h('ul', { className: 'list' }, e.points.map((p) => h('li', null, h('span', { className: 'lines' }, text(p)), where(p)))) : null])) : null;
}

const fact = (term, text) => (text ? [h('dt', null, term), h('dd', null, text)] : null);

function wayThere(s) {
  if (s.lat === null) {
    return null;
  }
  const said = h('p', { role: 'status' });
  return [h('button', { onclick: () => navigator.geolocation.getCurrentPosition(
    (p) => { const w = way({ lat: p.coords.latitude, lon: p.coords.longitude }, s); said.textContent = `${w.metres < 1000 ? `${Math.round(w.metres)} m` : `${(w.metres / 1000).toFixed(1)} km`} ${compass(w.bearing)} (${Math.round(w.bearing)}°), to within ${Math.round(p.coords.accuracy)} m`; },
    () => { said.textContent = 'This phone does not say where it is.'; }, { enableHighAccuracy: true, timeout: 20000 }) }, 'Which way, how far?'), said];
}

let outbox = [];
function warning() {
  const old = outbox.filter((e) => ['WAITING', 'PHOTOS'].includes(e.state) && Date.now() - e.at > DAY_MS);
  const parked = outbox.filter((e) => e.state.startsWith('PARKED'));
  return [old.length ? h('div', { className: 'caution' }, h('strong', null, `${old.length} unsent for over a day`), `Oldest: ${moment(Math.min(...old.map((e) => e.at)))}. Find a signal, or hand the text to the office.`) : null,
    parked.length ? h('div', { className: 'caution' }, h('strong', null, `${parked.length} to mend`), h('a', { href: '#/out' }, 'The server could not take it; open and mend it.')) : null];
}

const WORDS = { WAITING: 'waits to be sent', PHOTOS: 'words sent, photos waiting', SENT: 'sent', PARKED: 'to be mended', PARKED_PHOTO: 'words sent, a photo was refused' };
function out() {
  const s = status();
  const list = [...outbox].sort((a, b) => b.at - a.at);
  return [h('h1', null, 'Outbox'), warning(),
    s.needSignIn ? h('div', { className: 'caution' }, h('strong', null, 'Signed out'), 'Nothing is lost. ', h('a', { href: '/sign-in?next=/field' }, 'Sign in to send.')) : null,
    h('button', { className: 'primary', disabled: s.busy, onclick: () => send(true) }, s.busy ? 'Sending …' : 'Send now'),
    s.offline && !s.busy ? h('p', { className: 'note', role: 'status' }, 'No answer from the office: there is no signal, or the server is away. Nothing is lost; it goes by itself when the line is back.') : null,
    list.length ? h('ul', { className: 'list' }, list.map((e) => h('li', { 'data-id': e.id }, h('strong', null, db.sites.get(e.site)?.name || 'Site'),
      h('p', null, h('span', { className: `state ${e.state === 'SENT' ? 'sent' : ''}` }, WORDS[e.state]), `, ${moment(e.at)}${e.result === 'HELD' ? '. The office puts it in its place' : ''}`),
      e.person === db.person?.person ? null : h('p', { className: 'soft' }, 'written by another person; it is sent as theirs'),
      (e.why || []).map((w) => h('p', { className: 'caution' }, w)),
      h('div', { className: 'row' }, e.state === 'PARKED' ? h('button', { onclick: () => mendEntry(e) }, 'Mend') : null,
        e.text ? h('button', { onclick: () => saveFile(e) }, 'Save as a file') : null,
        e.state === 'PARKED_PHOTO' ? h('button', { onclick: () => retryPhoto(e) }, 'Try the photo again') : null,
        e.state === 'SENT' ? h('button', { onclick: () => clearEntry(e) }, 'Clear') : null),
      e.text ? h('details', null, h('summary', { className: 'button', 'data-at': `read ${e.id}` }, 'Read it'), plain(readWords(JSON.parse(e.text)), (line) => line)) : null))) : h('p', { className: 'soft' }, 'Nothing waits.')];
}

/** A finished visit in words, as it waits. */
function readWords(v) {
  const at = (x) => (installsOf(v.site).length > 1 && db.installs.get(x.install)?.name ? `, ${db.installs.get(x.install).name}` : '');
  return [`${day(v.on)}: ${word('kind', v.kind)}, ${nice(v.outcome)}`, ...(v.works || []).map((w) => `${kindOf(w.kind)?.name || 'Task'}${at(w)}: ${word('workOutcome', w.outcome)}${w.note ? `. ${w.note}` : ''}`),
    ...(v.readings || []).map((r) => `${nice(r.quantity)}${at(r)}: ${r.value} ${unitWord(r.unit)}`), ...(v.findings || []).map((f) => [word('symptom', f.symptom), f.cause, f.action].filter(Boolean).join('. ')),
    ...(v.parts || []).map((p) => `${p.quantity} × ${p.text || partName(p.part)}`), ...(v.followUps || []).map((f) => `Left to do: ${f.text}`), v.note].filter(Boolean);
}

async function mendEntry(e) {
  const draft = { ...JSON.parse(e.text).draft, id: e.id };
  await store.mend(e, draft);
  location.hash = `#/visit/${e.id}`;
}
async function retryPhoto(e) {
  await store.put('outbox', { ...e, state: 'PHOTOS', next: 0 });
  send(true);
}
function saveFile(e) {
  const link = h('a', { href: URL.createObjectURL(new Blob([e.text], { type: 'application/json' })), download: `visit-${e.id}.json` });
  link.click();
}

let room = '';
let noRoom = false;
async function phone() {
  const clock = await store.get('kv', 'clock');
  const kept = navigator.storage?.persisted ? await navigator.storage.persisted() : false;
  const estimate = navigator.storage?.estimate ? await navigator.storage.estimate() : {};
  const [wanted, here] = [new Set((db.data?.pictures || []).map((p) => p.key)), new Set(await keysHere().catch(() => []))];
  const along = [...wanted].filter((key) => here.has(key)).length;
  room = estimate.usage ? `${(estimate.usage / 1e6).toFixed(1)} MB of ${(estimate.quota / 1e6).toFixed(0)} MB` : 'not told';
  return [h('h1', null, 'On this phone'), h('dl', null, fact('Signed in', db.person?.name || 'nobody yet'), fact('Sites', String(db.data?.sites.length || 0)),
    fact('Photos, drawings', wanted.size ? `${along} of ${wanted.size}, of your next 7 days and ${db.data.pins.length} pinned ${db.data.pins.length === 1 ? 'site' : 'sites'}` : 'none asked for'),
    fact('Taken along', db.at ? `${moment(db.at)} (${age(db.at)})` : 'never'), fact('Unsent', String(outbox.filter((e) => e.state !== 'SENT').length)), fact('Room', room),
    fact('Kept for good', kept ? 'yes' : 'the phone may clear it when it is full'), fact('Clock', Math.abs(clock || 0) > 120 ? `${Math.abs(clock)} s ${clock > 0 ? 'ahead of' : 'behind'} the office` : 'right')),
  noRoom ? h('p', { className: 'caution', role: 'status' }, `The phone is full: ${wanted.size - along} of ${wanted.size} photos stay behind. What you write has room first. Clear something else from the phone, or unpin sites, then take them along again.`) : null,
  Math.abs(clock || 0) > 120 ? h('p', { className: 'caution' }, 'This phone’s clock is off. Times are kept as the phone tells them, and flagged.') : null,
  h('div', { className: 'row' }, h('button', { className: 'primary', onclick: refresh }, 'Take all sites along'),
    kept ? null : h('button', { onclick: async () => { await navigator.storage?.persist?.(); draw(); } }, 'Ask to keep it for good'),
    h('a', { className: 'button', href: '/my-day' }, 'Desk pages')),
  h('h2', null, 'Give the phone away'), h('p', null, 'Removes the firm’s sites from this phone. What is not sent stays.'),
  h('button', { onclick: async () => { await store.forget(); await load(); draw(); } }, 'Remove the sites')];
}
const age = (at) => { const m = Math.round((Date.now() - at) / 60000); return m < 60 ? `${m} min old` : m < 2880 ? `${Math.round(m / 60)} h old` : `${Math.round(m / 1440)} days old`; };

/** Photos last, and only while the server has said anew which. */
async function takeAlong() {
  const page = location.hash.split('/')[1];
  noRoom = await takePictures(db.data.pictures || [], writing, () => {}) === 'full';
  if (location.hash.split('/')[1] === page && ['site', 'phone'].includes(page)) {
    await draw();
  }
}

async function refresh() {
  let fresh = false;
  try {
    fresh = await fetchBundle();
  } catch (offline) {
    // no signal: what is on the phone stays
  }
  asked = true;
  await load();
  // where somebody is writing, nothing is drawn anew: that would take a letter away
  const typing = main.contains(document.activeElement) && document.activeElement.matches('input, select, textarea');
  await draw(typing || document.getElementById('finish') !== null);
  if (fresh) {
    takeAlong();
  }
}

/** After signing out nothing of the firm is shown, only what waits. */
function closed() {
  const some = (n, one, many) => (n ? h('p', null, h('strong', null, `${n} ${n > 1 ? many : one}`)) : null);
  const unsent = outbox.filter((e) => e.state !== 'SENT').length;
  return [h('h1', null, 'Signed out'), h('p', null, 'Sign in to read.'), some(unsent, 'visit waits to be sent', 'visits wait to be sent'), some(drafts.length, 'visit is not finished', 'visits are not finished'),
    unsent + drafts.length ? h('p', null, 'Nothing is lost: it is all on this phone.') : null, h('p', null, h('a', { className: 'button', href: '/sign-in?next=/field' }, 'Sign in'))];
}

const bar = document.getElementById('bar');
let drawn = '';
let drawing = 0;
async function draw(quiet) {
  outbox = await store.all('outbox');
  cleared = await store.get('kv', 'cleared') || [];
  drafts.splice(0, drafts.length, ...await store.all('drafts'));
  const [, page, id] = location.hash.split('/');
  const s = status();
  const shut = await store.get('kv', 'signedOut');
  if (!shut) {
    await meet(wasFinished);
  }
  const unsent = outbox.filter((e) => e.state !== 'SENT').length;
  bar.replaceChildren(s.needSignIn && !shut ? h('div', { className: 'top', role: 'status' }, h('a', { href: '/sign-in?next=/field' }, 'Signed out: sign in to send')) : '',
    s.offline || navigator.onLine === false ? h('div', { className: 'top', role: 'status' }, 'No signal: what you write is kept on this phone.') : '',
    newer() ? h('div', { className: 'top', role: 'status' }, 'A newer form is on the phone. Reload when nothing is half typed; what is typed stays.', h('button', { onclick: () => renew(settled) }, 'Reload')) : '',
    h('nav', { className: 'foot', 'aria-label': 'Field' }, [['', 'Today'], ['sites', 'Sites'], ['out', unsent ? `Outbox ${unsent}` : 'Outbox'], ['phone', 'Phone']].map(([p, name]) => h('a', { href: `#/${p}`, 'aria-current': (page || '') === p ? 'page' : null }, name))));
  if (quiet && !shut && !['out', 'phone', '', undefined].includes(page)) {
    return;
  }
  const mine = ++drawing;
  const content = shut ? closed() : page === 'sites' ? sites() : page === 'site' ? site(id) : page === 'out' ? out() : page === 'phone' ? await phone() : page === 'visit' ? await visitPage(id, db) : today();
  if (mine !== drawing) {
    // a later call draws
    return;
  }
  const back = keepPlace(main);
  main.replaceChildren(...content.flat(Infinity).filter((x) => x));
  if (drawn === location.hash) {
    back();
  }
  if (drawn !== location.hash) {
    drawn = location.hash;
    scrollTo(0, 0);
    main.focus();
  }
}

onChange(() => draw(true));
onNewer(() => draw(true));
addEventListener('hashchange', () => draw());
addEventListener('offline', () => draw(true));
const again = () => (status().offline ? refresh() : null);
addEventListener('online', async () => { await send(true); await again(); });
document.addEventListener('visibilitychange', async () => { if (!document.hidden) { draw(true); await send(false); await again(); } });

await load();
await draw();
navigator.serviceWorker?.register('/sw.js', { updateViaCache: 'none' }).catch(() => {});
navigator.storage?.persist?.();
await send(true).catch(() => {});
await refresh();
window.fieldReady = true;
