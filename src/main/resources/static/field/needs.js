// Which part a task that was done asks for: offered from the pump's model with its quantity, asked about once, never a wall.
import { h, number } from './dom.js';
import { db, kindOf, partName, word } from './data.js';

const NO_PART = { OLD: 'No part went in: the old one was put back.', UNKNOWN: 'Which part went in is not known.' };
const NOUN = { VALVE_RUBBER: 'rubber', SEAL: 'seal', STRAINER: 'strainer', FILTER: 'filter' };

/** Tells a task from the others of a visit. */
const keyOf = (t) => t.task || [t.install, t.pump, t.kind].join(' ');
const asks = (t) => kindOf(t.kind)?.parts || [];
/** The task is the change of a part; of an inspection one may go in or not. */
const changes = (t) => asks(t).length > 0 && kindOf(t.kind).changes !== false;
const done = (t) => t.outcome === 'DONE' && t.by !== 'OWNER';
const nounOf = (t) => { const kinds = [...new Set(asks(t).map((a) => a.kind))]; return (kinds.length === 1 && NOUN[kinds[0]]) || 'part'; };

/** What fits, by the models of the pumps; where a model names nothing, what the van has of that kind. */
function offers(t) {
  const found = new Map();
  const models = (db.installs.get(t.install)?.pumps || []).filter((p) => !t.pump || p.id === t.pump).map((p) => p.modelId);
  const add = (part, position, quantity) => {
    const key = `${part} ${position}`;
    found.set(key, { key, part, position, quantity: (found.get(key)?.quantity || 0) + quantity });
  };
  asks(t).forEach((a) => {
    const fits = models.flatMap((m) => db.data.fits.filter((f) => f.model === m && f.kind === a.kind && (!a.position || a.position === f.position)));
    fits.forEach((f) => add(f.part, f.position, f.quantity));
    if (!fits.length) {
      db.data.van.filter((v) => v.kind === a.kind).forEach((v) => add(v.id, a.position, a.quantity));
    }
  });
  return [...found.values()];
}

const said = (p) => p.part || p.text?.trim();
const loose = (d, t, list) => d.parts.filter((p) => !p.task && p.install === t.install && said(p) && !list.some((o) => o.part === p.part));
/** A part of the right kind at the same pump, whichever task it was put down for; of one with a place only that place. */
const covers = (p, t, list) => p.install === t.install && (!p.pump || !t.pump || p.pump === t.pump) && list.some((o) => o.part === p.part && (p.position ? o.position === p.position : !p.task));
/** The parts that are written down for a task: those tapped for it, and others that it asks for. */
const named = (d, t, list) => d.parts.filter((p) => said(p) && (p.task === keyOf(t) || covers(p, t, list)));

/** A task is done and asks for a part, and nobody has said which, or that none went in. */
const open = (d, t) => done(t) && changes(t) && !t.noPart && !named(d, t, offers(t)).length;

/** What goes along with a task in words. */
export const partWords = (d, t) => (done(t) && asks(t).length && !named(d, t, offers(t)).length && NO_PART[t.noPart]) || null;

/** Tasks that draw nothing from the van for want of a name. */
export const unnamed = (d, nameOf) => d.tasks.filter((t) => open(d, t)).map((t) => ({
  say: `${nameOf(t)}: which ${nounOf(t)} went in? No part is named, so nothing leaves the van’s stock. Tap it at the task, or “None, old one put back” or “Not known”.`,
  note: `${nameOf(t)}: done, no part named.` }));

/** Parts that were tapped at a task whose answer is another by now: they stand under Parts and would leave the van. */
export const strayed = (d) => d.parts.filter((p) => p.task && said(p) && d.tasks.some((t) => keyOf(t) === p.task && !done(t))).map((p) => ({
  say: `${p.part ? partName(p.part) : p.text.trim()} is under Parts for a task that is not answered “${word('workOutcome', 'DONE')}”: take it away there if it did not go in.`,
  note: `${p.part ? partName(p.part) : p.text.trim()}: put down, though its task was not done by us.` }));

/** Asks which part went in, beside a task that was done. */
export function partAsked(c, t) {
  if (!done(t) || !asks(t).length) {
    return null;
  }
  const list = offers(t);
  const here = named(c.d, t, list);
  const put = (row) => { t.noPart = null; c.d.parts.push({ install: t.install, pump: t.pump || null, task: keyOf(t), ...row }); c.again(); };
  // one that is named is enough, but for other places of the same task
  const several = new Set(list.map((o) => o.position)).size > 1;
  const left = list.filter((o) => !here.length || (several && !here.some((p) => p.part === o.part || p.position === o.position)));
  const buttons = left.map((o) => {
    const van = db.data.van.find((v) => v.id === o.part);
    return h('button', { onclick: () => put({ part: o.part, quantity: String(o.quantity), batch: van?.batch || '', position: o.position || null }) },
      `${partName(o.part)}: ${number(o.quantity)}${van ? `${van.batch ? ` of batch ${van.batch}` : ''} (${number(van.quantity)} on the van)` : ' (none counted on the van)'}`);
  });
  if (here.length) {
    return buttons.length ? h('div', { className: 'note' }, h('p', null, 'This as well?'), h('div', { className: 'row full' }, buttons)) : null;
  }
  if (!changes(t)) {
    return h('div', { className: 'note' }, h('p', null, `If a ${nounOf(t)} went in:`), h('div', { className: 'row full' }, buttons, h('button', { onclick: () => put({ part: null, text: '', quantity: '1' }) }, 'Another part')));
  }
  const way = (code, name) => h('button', { 'aria-pressed': String(t.noPart === code), onclick: () => { t.noPart = t.noPart === code ? null : code; c.again(); } }, name);
  return h('div', { className: 'note' }, h('p', null, `Which ${nounOf(t)} went in? While none is named, nothing leaves the van’s stock and no batch is kept.`),
    h('div', { className: 'row full' }, buttons, loose(c.d, t, list).map((p) => h('button', { onclick: () => { p.task = keyOf(t); t.noPart = null; c.again(); } }, `“${p.part ? partName(p.part) : p.text.trim()}”, put down below`))),
    h('div', { className: 'row' }, h('button', { onclick: () => put({ part: null, text: '', quantity: '1' }) }, 'Another part'), way('OLD', 'None, old one put back'), way('UNKNOWN', 'Not known')),
    t.noPart === 'OLD' ? h('p', null, `“${word('workOutcome', 'DONE')}” counts it as new from today. If the old one goes on, answer “${word('workOutcome', 'INSPECTED_GOOD')}”.`) : null);
}
