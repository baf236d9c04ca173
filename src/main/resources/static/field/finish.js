// What is written down in a visit, what must be put right first, and the visit as it is sent.
import { parse } from './dom.js';
import { installsOf, kindOf } from './data.js';
import { commissioned, unanswered } from './commission.js';
import { changed, registerWork } from './cases.js';
import { waterProblems, waterSent, waterWords } from './water.js';
import { QUANTITIES, flaw } from './readings.js';
import { PRESSURE } from './found.js';
import { unplaced } from './where.js';

/** What is written down in a visit, in words; the times are apart. */
export function wrote(d) {
  const some = (n, one, many = `${one}s`) => n > 0 && `${n} ${n > 1 ? many : one}`;
  const filled = (x) => Object.values(x).some((v) => v === true || String(v ?? '').trim());
  return [some(d.tasks.filter((t) => t.outcome).length, 'answered task'), some(Object.values(d.readings).filter((r) => String(r.value).trim()).length, 'reading'), some(d.findings.length, 'finding'), some(d.parts.length, 'part'),
    filled(d.water) && 'water and hygiene', some(d.photos.filter((id) => id !== d.signature).length, 'photo'), d.note.trim() && 'the note', some(d.followUps.length, 'thing left to do', 'things left to do'),
    d.cases?.length && 'what came up', (d.steps.length || Object.keys(d.checks).length) && 'the commissioning', (d.nobodyThere || d.customerName.trim()) && 'the customer', d.signature && 'the signature', d.outcome !== 'DONE' && 'how it went'].filter(Boolean);
}

/** What must be put right first; the server checks the same again. */
export function check(c) {
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
  const installs = installsOf(d.site);
  if (d.findings.some((f) => f.symptom && unplaced(installs, f))) {
    wrong.push('Say where each finding was: at which install, or the whole site.');
  }
  if (d.parts.some((p) => unplaced(installs, p))) {
    wrong.push('Say in which install each part was fitted.');
  }
  d.followUps.filter((f) => !f.text.trim()).forEach(() => wrong.push('Say what is left to do.'));
  if (d.kind !== 'COMMISSIONING' || d.outcome !== 'DONE') {
    return wrong;
  }
  return wrong.concat(installs.length && !commissioned(d) ? ['Say which install was put to work: its readings become the baseline.'] : [], unanswered(d));
}

/** The visit as it is sent; the draft rides along so that it can be mended. */
export function written(d) {
  const notes = [d.note.trim(), ...(d.also || []).map((text) => `Typed in another window: ${text}`), waterWords(d)].filter(Boolean);
  return { v: 1, id: d.id, visit: d.visit, site: d.site, kind: d.kind, on: d.on, startedAt: d.startedAt, arrivedAt: d.arrivedAt, leftAt: d.leftAt, people: d.people, outcome: d.outcome,
    reason: d.outcome === 'DONE' ? null : d.reason, note: notes.join('\n') || null, nobodyThere: d.nobodyThere, customerName: d.customerName.trim() || null,
    works: d.tasks.filter((t) => t.outcome).map(({ task, install, pump, kind, outcome, reason, lookAgainOn, by, note }) => ({ task, install, pump, kind, outcome, reason: outcome === 'COULD_NOT' ? reason : null, lookAgainOn: outcome === 'INSPECTED_GOOD' ? lookAgainOn || null : null, by: by || 'US', note: note || null })),
    readings: Object.entries(d.readings).filter(([, r]) => parse(r.value) !== null).map(([key, r]) => ({ install: key.split('|')[0], pump: null, quantity: key.split('|')[1], place: r.place, value: parse(r.value), unit: r.unit, asRead: true, runs: r.timed && r.bucket ? { litres: parse(r.bucket.litres), seconds: r.bucket.seconds } : null, notComparable: r.notComparable || changed(d) })),
    findings: d.findings.filter((f) => f.symptom).map(({ install, symptom, cause, action }) => ({ install, symptom, cause: cause || null, action: action || null })),
    parts: d.parts.map((p) => ({ install: p.install, part: p.part, text: p.part ? null : p.text, quantity: parse(p.quantity), batch: p.batch || null })),
    followUps: d.followUps.concat(registerWork(d)), water: waterSent(d), photos: d.photos.length, checklist: d.kind === 'COMMISSIONING' ? d.checklist : null, checks: Object.entries(d.checks).map(([code, x]) => ({ code, done: !!x.done, why: x.why || null })),
    steps: d.steps, dryFlow: d.dryFlow || null, dryFrom: d.dryFrom || null, dryUntil: d.dryUntil || null, leftSetting: d.leftSetting?.trim() || null, install: d.kind === 'COMMISSIONING' ? commissioned(d) : null, cautions: Object.keys(d.cautions), draft: d };
}
