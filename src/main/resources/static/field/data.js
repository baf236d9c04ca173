// What was taken along, looked up by id.
import * as store from './store.js';

export const db = { data: null, at: null, person: null, seen: null, sites: new Map(), installs: new Map(), words: {} };

export async function load() {
  const kept = await store.get('kv', 'bundle');
  // what an older edition took along has no pins, pictures, lines and fitting parts
  db.data = kept?.data ? { pins: [], pictures: [], lines: [], fits: [], ...kept.data } : null;
  db.at = kept?.at || null;
  db.person = await store.get('kv', 'who');
  db.seen = await store.get('kv', 'seen') || null;
  db.sites = new Map();
  db.installs = new Map();
  if (db.data) {
    db.sites = new Map(db.data.sites.map((s) => [s.id, s]));
    db.installs = new Map(db.data.installs.map((i) => [i.id, i]));
    db.words = Object.fromEntries(Object.entries(db.data.words).map(([k, list]) => [k, list.map((c) => [c.value, c.label])]));
  }
}

export const word = (list, key) => db.words[list]?.find(([k]) => k === key)?.[1] || (key || '').toLowerCase().replaceAll('_', ' ');
export const nice = (text) => (text || '').toLowerCase().replaceAll('_', ' ');
export const of = (list, site) => (db.data?.[list] || []).filter((x) => x.site === site);
export const installsOf = (site) => of('installs', site);
export const kindOf = (id) => db.data.kinds.find((k) => k.id === id);
export const partName = (id) => db.data.van.find((p) => p.id === id)?.name || db.data.fits.find((f) => f.part === id)?.name || 'a part of the van';
export const unitWord = (unit) => ({ LITRE_PER_MINUTE: 'l/min', LITRE_PER_DAY: 'l/day', LITRE_PER_SECOND: 'l/s', METRE: 'm', MILLIMETRE: 'mm', BAR: 'bar', KILOPASCAL: 'kPa', PER_MINUTE: '/min', CELSIUS: '°C' }[unit] || unit);
export const iso = (d = new Date()) => `${d.getFullYear()}-${String(d.getMonth() + 1).padStart(2, '0')}-${String(d.getDate()).padStart(2, '0')}`;
