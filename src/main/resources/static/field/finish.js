// What is written down in a visit, what must be put right first, and the visit as it is sent.
import { day, parse } from './dom.js';
import { db, installsOf, kindOf, partName, unitWord } from './data.js';
import { unacknowledged } from './caution.js';
import { backwards, commissioned, nameless, plate, unanswered, underPressure, unread } from './commission.js';
import { changed, registerWork, serialEnds, unsettled } from './cases.js';
import { wrongNumber } from './numbers.js';
import { waterEnds, waterSent, waterWords } from './water.js';
import { asked, flaw, nameOf, sure } from './readings.js';
import { PRESSURE } from './found.js';
import { partWords, strayed, unnamed } from './needs.js';
import { unplaced } from './where.js';

/** What is written down in a visit, in words; the times are apart. */
export function wrote(d) {
  const some = (n, one, many = `${one}s`) => n > 0 && `${n} ${n > 1 ? many : one}`;
  const filled = (x) => Object.values(x).some((v) => v === true || String(v ?? '').trim());
  return [some(d.tasks.filter((t) => t.outcome).length, 'answered task'), some(Object.values(d.readings).filter((r) => String(r.value).trim()).length, 'reading'), some(d.findings.length, 'finding'), some(d.parts.length, 'part'),
    filled(d.water) && 'water and hygiene', some(d.photos.filter((id) => id !== d.signature).length, 'photo'), d.note.trim() && 'the note', some(d.followUps.length, 'thing left to do', 'things left to do'),
    d.cases?.length && 'what came up', (d.steps.length || Object.keys(d.checks).length || d.pump) && 'the commissioning', (d.nobodyThere || d.customerName.trim()) && 'the customer', d.signature && 'the signature', d.outcome !== 'DONE' && 'how it went'].filter(Boolean);
}

/** What must be put right first; the server checks the same again. */
export function check({ d }) {
  const wrong = [];
  if (d.outcome === 'COULD_NOT' && !d.reason) {
    wrong.push('Say why the visit could not be done.');
  }
  d.tasks.filter((t) => t.outcome === 'COULD_NOT' && !t.reason).forEach((t) => wrong.push(`${kindOf(t.kind)?.name}: say why it could not be done.`));
  const installs = installsOf(d.site);
  if (d.findings.some((f) => f.symptom && unplaced(installs, f))) {
    wrong.push('Say where each finding was: at which install, or the whole site.');
  }
  if (d.parts.some((p) => unplaced(installs, p))) {
    wrong.push('Say in which install each part was fitted.');
  }
  wrong.push(...unsettled(d));
  d.followUps.filter((f) => !f.text.trim()).forEach(() => wrong.push('Say what is left to do.'));
  if (d.kind !== 'COMMISSIONING' || d.outcome !== 'DONE') {
    return wrong;
  }
  return wrong.concat(installs.length && !commissioned(d) ? ['Say which install was put to work: its readings become the baseline.'] : [], unanswered(d));
}

const whole = (p) => (p.part || p.text?.trim()) && parse(p.quantity) > 0;
/** Nothing arrives, the pump beats, and nobody said whether the tank end is shut. */
const unsaid = (d, key, r) => key.endsWith('|DELIVERED_FLOW') && parse(r.value) === 0 && parse(d.readings[`${key.split('|')[0]}|BEAT_RATE`]?.value) > 0 && !r.float;
const doubted = (d, key, r) => { const question = asked(d, key); return question && !sure(r, question) ? question : ''; };

function readingEnds(d, key, r) {
  const name = nameOf(key.split('|')[1]);
  const wrong = flaw(key.split('|')[1], r.value, r.unit);
  const question = wrong ? '' : doubted(d, key, r);
  const value = `${String(r.value).trim()} ${unitWord(r.unit)}`;
  return [wrong && { say: `${name}: ${wrong}`, note: `${name} as typed: ${value}`, data: true },
    question && { say: `${name} ${value}: ${question} Mend it, or say that it is as read.`, note: `${name} ${value}, asked about and not confirmed: ${question}`, data: true },
    unsaid(d, key, r) && { say: 'Nothing arrives, but the pump beats: say whether a float or branch is shut at the tank end.', note: 'Nothing arrived though the pump beat; it was not said whether a float or branch was shut at the tank end.' },
    r.bucket?.seconds.length > 0 && !(parse(r.bucket.litres) > 0) && { say: `${name}, bucket: “${r.bucket.litres}” is no number of litres.`, note: `${name}: bucket of “${r.bucket.litres}” litres, full after ${r.bucket.seconds.map((s) => s.toFixed(1)).join(', ')} s`, data: true }];
}

/** A pump put to work without its flows has nothing that later visits could be compared with. */
function unmeasured(d) {
  const install = d.kind === 'COMMISSIONING' && d.outcome === 'DONE' && commissioned(d);
  const missing = install ? ['DELIVERED_FLOW', 'DRIVE_FLOW'].filter((q) => !(parse(d.readings[`${install}|${q}`]?.value) > 0)).map(nameOf) : [];
  return missing.length && { say: `${missing.join(', ')} of ${db.installs.get(install)?.name || 'this install'}: not read under Readings, so the baseline lacks it.`, note: `Put to work without a reading for the baseline: ${missing.join(', ')}.` };
}

const taskName = (d) => (t) => `${kindOf(t.kind)?.name || 'a task'}${installsOf(d.site).length > 1 ? `, ${db.installs.get(t.install)?.name || ''}` : ''}`;

/** What the plan asked for and nobody said what became of. */
function left(d) {
  const names = d.visit && d.outcome === 'DONE' ? d.tasks.filter((t) => !t.outcome).map(taskName(d)).join('; ') : '';
  return names && { say: `Asked for and not answered: ${names}. It stays due.`, note: `Asked for and not answered: ${names}.` };
}

/** Loose ends: asked about once, then they go along in words, and nothing typed is dropped. */
export function loose({ d, site }) {
  const pressed = d.tasks.some((t) => ['DONE', 'INSPECTED_GOOD'].includes(t.outcome) && t.by !== 'OWNER' && PRESSURE.includes(kindOf(t.kind)?.code)) || (d.kind === 'COMMISSIONING' && underPressure(d));
  const inside = d.arrivedAt && (site.hazards || []).some((z) => z.kind === 'CONFINED_SPACE');
  return [Object.entries(d.readings).map(([key, r]) => readingEnds(d, key, r)),
    pressed && !d.cautions.PRESSURE && unacknowledged('PRESSURE'), inside && !d.cautions.CHAMBER && unacknowledged('CHAMBER'), waterEnds(d),
    d.findings.filter((f) => !f.symptom && (f.cause?.trim() || f.action?.trim())).map((f) => ({ say: `A finding: choose what is wrong with “${(f.cause || f.action).trim()}”.`, note: `Finding as typed: ${[f.cause, f.action].filter((x) => x?.trim()).join('. ')}`, data: true })),
    d.parts.filter((p) => !whole(p)).map((p) => ({ say: 'A part needs its name and how many.', note: `Part as typed: ${[p.quantity, p.part ? partName(p.part) : p.text, p.batch && `batch ${p.batch}`].filter(Boolean).join(' ')}`, data: true })),
    d.followUps.filter((f) => f.dueOn && f.dueOn < d.on).map((f) => ({ say: `“${f.text.trim()}”: ${day(f.dueOn)} is past. Is the day right?`, note: `“${f.text.trim()}” was asked for by ${day(f.dueOn)}, a day past at the visit.` })),
    left(d), serialEnds(d), unnamed(d, taskName(d)), strayed(d), unmeasured(d), nameless(d), d.kind === 'COMMISSIONING' && backwards(d) && { say: 'The dry setting ends before it begins: mend its two days.', note: `Dry setting as typed: from ${day(d.dryFrom)} until ${day(d.dryUntil)}`, data: true },
    d.kind === 'COMMISSIONING' && unread(d).map(([name, text]) => ({ say: `${name}: ${wrongNumber(text)}`, note: `${name} as typed: ${text}`, data: true }))].flat(Infinity).filter(Boolean);
}

/** Readings that were asked about and are as read, for the office. */
const confirmed = (d) => Object.entries(d.readings).map(([key, r]) => [key, r, asked(d, key)]).filter(([, r, question]) => question && sure(r, question))
  .map(([key, r, question]) => `${nameOf(key.split('|')[1])} ${r.value} ${unitWord(r.unit)} is as read. Asked: ${question}`);

const readable = (text) => (wrongNumber(text) ? null : text || null);

/** The visit as it is sent; the draft rides along so that it can be mended. */
export function written({ d, site }) {
  const ends = loose({ d, site });
  const notes = [d.note.trim(), ...(d.also || []).map((text) => `Typed in another window: ${text}`), waterWords(d), ...confirmed(d), ...ends.map((e) => e.note)].filter(Boolean);
  return { v: 1, id: d.id, visit: d.visit, site: d.site, kind: d.kind, on: d.on, startedAt: d.startedAt, arrivedAt: d.arrivedAt, leftAt: d.leftAt, people: d.people, outcome: d.outcome,
    reason: d.outcome === 'DONE' ? null : d.reason, note: notes.join('\n') || null, nobodyThere: d.nobodyThere, customerName: d.customerName.trim() || null,
    works: d.tasks.filter((t) => t.outcome).map((t) => ({ task: t.task, install: t.install, pump: t.pump, kind: t.kind, outcome: t.outcome, reason: t.outcome === 'COULD_NOT' ? t.reason : null, lookAgainOn: t.outcome === 'INSPECTED_GOOD' ? t.lookAgainOn || null : null, by: t.by || 'US', note: [t.note, partWords(d, t)].filter(Boolean).join('. ') || null })),
    readings: Object.entries(d.readings).filter(([key, r]) => parse(r.value) !== null && !flaw(key.split('|')[1], r.value, r.unit)).map(([key, r]) => ({ install: key.split('|')[0], pump: null, quantity: key.split('|')[1], place: r.place, value: parse(r.value), unit: r.unit, asRead: !!asked(d, key) && !doubted(d, key, r), runs: r.timed && parse(r.bucket?.litres) > 0 && r.bucket.seconds.length ? { litres: parse(r.bucket.litres), seconds: r.bucket.seconds } : null, notComparable: r.notComparable || changed(d, key.split('|')[0]) || (doubted(d, key, r) ? 'not confirmed on the spot' : unsaid(d, key, r) ? 'not said whether the tank end was shut' : null) })),
    findings: d.findings.filter((f) => f.symptom).map(({ install, symptom, cause, action }) => ({ install, symptom, cause: cause || null, action: action || null })),
    parts: d.parts.filter(whole).map((p) => ({ install: p.install, pump: p.pump || null, part: p.part, text: p.part ? null : p.text, position: db.words.position.some(([k]) => k === p.position) ? p.position : null, quantity: parse(p.quantity), batch: p.batch || null })),
    followUps: d.followUps.concat(registerWork(d), ends.some((e) => e.data) ? [{ text: 'Settle what was typed and could not be read: the words are in the report’s note', dueOn: null, promised: false }] : []), water: waterSent(d), photos: d.photos.length, checklist: d.kind === 'COMMISSIONING' ? d.checklist : null, checks: Object.entries(d.checks).map(([code, x]) => ({ code, done: !!x.done, why: x.why || null })),
    steps: d.steps.map(({ setting, drive, delivered }) => ({ setting, drive: readable(drive), delivered: readable(delivered) })), dryFlow: readable(d.dryFlow), dryFrom: (!backwards(d) && d.dryFrom) || null, dryUntil: (!backwards(d) && d.dryUntil) || null, leftSetting: d.leftSetting?.trim() || null, install: d.kind === 'COMMISSIONING' ? commissioned(d) : null, pump: d.kind === 'COMMISSIONING' ? plate(d) : null, cautions: Object.keys(d.cautions), draft: d };
}
