// What changed in the plan of this person's visits since they last saw it on this phone.
import { h, day, moment } from './dom.js';
import * as store from './store.js';
import { db, iso } from './data.js';

const MANY = 8;
const later = (days) => { const d = new Date(); d.setDate(d.getDate() + days); return iso(d); };
const hours = (v) => [v.from, `${v.minutes} min`].filter(Boolean).join(', ');
const about = ({ id, site, on, from, minutes, kind, ring, note, others, tasks }) => ({ id, site, on, from, minutes, rest: JSON.stringify([kind, ring, note, others, tasks]) });

/** What is kept of the plan: how each visit stood when it was seen, up to which day, and when. */
const asItIs = () => ({ person: db.person?.person, at: Date.now(), until: later(7), visits: db.data.planned.map(about) });
const kept = () => (db.seen && db.seen.person === db.person?.person ? db.seen : null);

/** Remembers the plan as it is while nothing in it is news; while something is, only what came nearer without having changed. */
export async function meet(done) {
  if (!db.data || !db.person) {
    return;
  }
  const seen = kept();
  const quiet = db.data.planned.filter((v) => done(v.id) || !words(v));
  const old = (seen?.visits || []).filter((v) => v.on >= iso() && !quiet.some((q) => q.id === v.id));
  const all = quiet.length === db.data.planned.length && !off(done).length;
  const next = all || !seen ? { ...asItIs(), visits: quiet.map(about) } : { ...seen, visits: [...old, ...quiet.map(about)] };
  if (!seen || next.until !== seen.until || JSON.stringify(next.visits) !== JSON.stringify(seen.visits)) {
    await keep(next);
  }
}

async function keep(seen) {
  db.seen = seen;
  // a full phone shows the same news again
  await store.put('kv', seen, 'seen').catch(() => {});
}

/** What is new about a visit, in words; nothing if it stands as it was seen. */
function words(v) {
  const seen = kept();
  const was = seen?.visits.find((x) => x.id === v.id);
  const changed = v.changed && Date.parse(v.changed);
  if (!was) {
    // after signing out it is not known any more what was seen
    const isNew = seen ? v.on <= seen.until || (changed || Date.parse(v.made)) > seen.at : changed > Date.now() - 86400000;
    return !isNew ? '' : changed ? `New or changed, ${moment(changed)}` : 'New';
  }
  const now = about(v);
  return was.on !== now.on ? `Changed, was ${day(was.on)}, ${hours(was)}`
    : was.from !== now.from || was.minutes !== now.minutes ? `Changed, was ${hours(was)}`
      : was.rest !== now.rest ? 'Changed in tasks, people or note' : '';
}

export function news(v) {
  const text = words(v);
  return text ? h('p', null, h('span', { className: 'state late' }, text)) : null;
}

/** Where a visit went that is no longer in the list. */
function gone(v) {
  const now = db.data.moved?.find((m) => m.id === v.id);
  return !now ? 'taken off your list' : now.state === 'CANCELLED' ? 'cancelled' : now.on === null ? 'taken out of the week, without a day for now'
    : `now ${[day(now.on), now.from, now.who].filter(Boolean).join(', ')}`;
}

/** Visits that were seen and are not in the list any more; what somebody reported is done, not taken off. */
function off(done) {
  const planned = new Set(db.data.planned.map((v) => v.id));
  return (kept()?.visits || []).filter((v) => v.on >= iso() && !planned.has(v.id) && !done(v.id)
    && !db.data.visits.some((r) => r.site === v.site && r.on >= iso(new Date(kept().at))));
}

const line = (v, text) => h('li', null, `${db.sites.get(v.site)?.name || 'Site'}, ${[day(v.on), v.from].filter(Boolean).join(', ')}: ${text}`);

/** What changed and what was taken off, in one place, and a button that says it was seen. */
export function changes(done, again) {
  const lines = [...off(done).map((v) => line(v, gone(v))), ...db.data.planned.filter((v) => words(v) && !done(v.id)).map((v) => line(v, words(v)))];
  const list = h('ul', { className: 'list' }, lines);
  return lines.length ? h('div', { className: 'caution', id: 'news' }, h('strong', null, `${lines.length} ${lines.length === 1 ? 'change' : 'changes'} since you last looked`),
    lines.length > MANY ? h('details', null, h('summary', { className: 'button' }, 'Which'), list) : list,
    h('div', { className: 'row' }, h('button', { onclick: async () => { await keep(asItIs()); await again(); } }, 'Seen'))) : null;
}
