// What was read: quantity, value and unit, bucket and watch, and what it means.
import { h, field, choose, day, number, parse } from './dom.js';
import { preCharge, runs, BAR, L_MIN, air, atTemperature } from './calc.js';
import { judge } from './diagnosis.js';
import { db, unitWord } from './data.js';
import { changed } from './cases.js';
import { doubt } from './doubt.js';
import { marked, numberField, wrongNumber } from './numbers.js';

export const QUANTITIES = [['DELIVERED_FLOW', 'Delivered flow', ['LITRE_PER_MINUTE', 'LITRE_PER_DAY', 'LITRE_PER_SECOND']], ['BEAT_RATE', 'Beats', ['PER_MINUTE']],
  ['DRIVE_FLOW', 'Drive flow', ['LITRE_PER_MINUTE', 'LITRE_PER_SECOND']], ['WASTE_FLOW', 'Waste flow', ['LITRE_PER_MINUTE', 'LITRE_PER_SECOND']],
  ['DELIVERY_PRESSURE', 'Delivery pressure', ['BAR', 'KILOPASCAL']], ['PRE_CHARGE', 'Pre-charge', ['BAR', 'KILOPASCAL']], ['FALL', 'Fall', ['METRE', 'MILLIMETRE']],
  ['SOURCE_FLOW', 'Source', ['LITRE_PER_MINUTE', 'LITRE_PER_SECOND', 'LITRE_PER_DAY']], ['WATER_TEMPERATURE', 'Water temperature', ['CELSIUS']]];
const SI = { LITRE_PER_MINUTE: L_MIN, LITRE_PER_DAY: 1e-3 / 86400, LITRE_PER_SECOND: 1e-3, METRE: 1, MILLIMETRE: 1e-3, BAR: 1e5, KILOPASCAL: 1e3, PER_MINUTE: 1 / 60 };

/** The most that the office takes, in the quantity's usual unit. */
const MOST = { BEAT_RATE: [600, 1 / 60], DELIVERY_PRESSURE: [100, BAR], PRE_CHARGE: [100, BAR], FALL: [200, 1] };

/** What is wrong with a reading as typed, in words; nothing if it can be. */
export function flaw(q, text, unit) {
  if (q === 'WATER_TEMPERATURE') {
    return wrongNumber(text, { least: -5, most: 60, unit: '°C' });
  }
  const [most, si] = MOST[q] || [100000, L_MIN];
  return wrongNumber(text, unit ? { most: Number((most * si / SI[unit]).toPrecision(6)), unit: unitWord(unit) } : {});
}

/** All readings of an install that can be, SI by quantity. */
function measured(d, install) {
  const si = {};
  QUANTITIES.forEach(([q]) => {
    const r = d.readings[`${install}|${q}`];
    const v = parse(r?.value);
    if (v !== null && !flaw(q, r.value, r.unit)) {
      si[q] = { si: q === 'WATER_TEMPERATURE' ? v : v * SI[r.unit], u: r.u ? r.u * SI[r.unit] : undefined };
    }
  });
  return si;
}

/** What to ask about a reading of a visit, if anything. */
export function asked(d, key) {
  const [id, q] = key.split('|');
  const i = db.installs.get(id) || {};
  return doubt(q, measured(d, id), changed(d, id) ? { ...i, baseline: null } : i);
}

/** Whether the question as it stands was answered: it is as read. */
export const sure = (r, question) => r.sure === `${r.value} ${r.unit} ${question}`;

/** The readings of an install that are asked about and not confirmed. */
const doubted = (d, install) => QUANTITIES.map(([q]) => q).filter((q) => { const r = d.readings[`${install}|${q}`]; const question = r && asked(d, `${install}|${q}`); return question && !sure(r, question); });

/** What the readings of an install say. With a value that nobody believes yet nothing is worked out; that the pump beats against a shut line is said all the same. */
function verdict(c, i) {
  const si = measured(c.d, i.id);
  const shut = si.DELIVERED_FLOW?.si === 0 && si.BEAT_RATE?.si > 0;
  const out = shut ? [] : doubted(c.d, i.id);
  out.forEach((q) => { delete si[q]; });
  const told = changed(c.d, i.id) ? judge({ ...i, baseline: null }, c.site, null, si, c.d.on) : judge(i, c.site, db.data.expected[i.id], si, c.d.on);
  if (c.d.kind === 'COMMISSIONING' && i.promised && si.DELIVERED_FLOW?.si > 0) {
    told.said.push(promise(i, si.DELIVERED_FLOW.si));
  }
  return out.length ? { ...told, said: [...told.said, `Left out until it is mended or said to be as read: ${out.map((q) => nameOf(q)).join(', ')}.`] } : told;
}

/** The word for a quantity. */
export const nameOf = (q) => QUANTITIES.find(([k]) => k === q)[1];

/** What stands against “as usual” in the readings of an install, by name. */
export function unusual(c, i) {
  const questioned = QUANTITIES.map(([q]) => q).filter((q) => c.d.readings[`${i.id}|${q}`] && asked(c.d, `${i.id}|${q}`)).map((q) => nameOf(q).toLowerCase());
  const told = verdict(c, i);
  return [...new Set([...questioned, ...(told.zero ? ['nothing arrives'] : told.off)])];
}

export function readings(c, i) {
  const key = (q) => `${i.id}|${q}`;
  const say = h('div', { 'aria-live': 'polite' });
  const doubts = [];
  const tell = () => {
    doubts.forEach((ask) => ask());
    const told = verdict(c, i);
    c.look?.();
    const r = c.d.readings[key('DELIVERED_FLOW')];
    say.replaceChildren(...(told.said.length ? [h('div', { className: told.zero ? 'caution' : 'note' }, told.said.map((s) => h('p', null, s)), told.look.length ? [h('p', null, told.look.length > 1 ? 'Look in this order:' : 'Look at:'), h('ol', null, told.look.map((s) => h('li', null, s)))] : null,
      told.zero ? h('div', { className: 'row' }, ['Float shut at the tank', 'Branch shut at the tank end', 'All open, still nothing'].map((why, n) => h('button', { 'aria-pressed': String(r.float === why), onclick: () => {
        r.float = why; r.notComparable = n < 2 ? why : null; c.again(); } }, why))) : null)] : []));
  };
  const more = c.d.more === true || c.d.more?.[i.id];
  const shown = (q, n) => n < 3 || more || c.d.readings[key(q)];
  const rows = QUANTITIES.map(([q, name, units], n) => {
    if (!shown(q, n)) {
      return null;
    }
    const r = () => { c.d.readings[key(q)] ??= { value: '', unit: units[0], place: q === 'SOURCE_FLOW' ? 'SOURCE' : q === 'DELIVERED_FLOW' ? 'TANK' : 'PUMP' }; return c.d.readings[key(q)]; };
    const now = c.d.readings[key(q)];
    const last = db.data.readings.find((x) => x.install === i.id && x.quantity === q && x.comparable);
    const unit = choose(units.map((u) => [u, unitWord(u)]), now?.unit || units[0], (u) => { r().unit = u; c.save(); look(); });
    unit.setAttribute('aria-label', `Unit of ${name}`);
    const input = h('input', { type: 'text', inputMode: 'decimal', autocomplete: 'off', value: now?.value || '', 'data-q': q, oninput: (e) => { const x = r(); Object.assign(x, { value: e.target.value, u: null, timed: false }); c.save(); look(); } });
    const box = field(name, input, last ? `last ${number(last.value)} ${unitWord(last.unit)} on ${day(last.on)}` : null);
    const wrap = h('span', { className: 'with' });
    input.replaceWith(wrap);
    wrap.append(input, unit);
    const see = marked(box, input, (text) => flaw(q, text, c.d.readings[key(q)]?.unit || units[0]));
    const ask = h('div', { 'aria-live': 'polite' });
    doubts.push(() => {
      const x = c.d.readings[key(q)];
      const question = x ? asked(c.d, key(q)) : '';
      ask.replaceChildren(...(question ? [h('div', { className: 'note' }, h('p', null, question), h('div', { className: 'row' }, h('button', { 'aria-pressed': String(sure(x, question)), onclick: () => {
        x.sure = sure(x, question) ? null : `${x.value} ${x.unit} ${question}`; c.again(); } }, `${name}: it is as read`)))] : []));
    });
    const look = () => { see(); tell(); };
    return [box, ask, q.endsWith('_FLOW') ? bucket(c, r, input, unit, look, key(q)) : null, q === 'DELIVERED_FLOW' ? field('Measured at', choose([['TANK', 'the tank'], ['PUMP', 'the pump']], now?.place || 'TANK', (p) => { r().place = p; c.save(); })) : null];
  });
  tell();
  return [h('h2', null, `Readings${c.installs.length > 1 ? `, ${i.name}` : ''}`), rows, more ? null : h('button', { onclick: () => { c.d.more = { ...c.d.more, [i.id]: true }; c.again(); } }, 'More readings'), say, c.d.kind === 'COMMISSIONING' ? null : charge(c, i)];
}

/** Seconds go on evenly while the page is open, and by the phone's clock when it was closed. */
const now = () => performance.timeOrigin + performance.now();
function bucket(c, r, input, unit, tell, key) {
  const box = h('details', null, h('summary', { className: 'button', 'data-at': `bucket ${key}` }, 'Bucket and watch'));
  const out = h('p', { role: 'status' });
  const watch = h('p', { className: 'watch' }, '0.0 s');
  const begun = () => c.d.readings[key]?.bucket?.begun || 0;
  let ticking;
  let seen = false;
  const tick = () => {
    seen ||= watch.isConnected;
    if (!begun() || (seen && !watch.isConnected)) {
      clearInterval(ticking);
      return;
    }
    watch.textContent = `${((now() - begun()) / 1000).toFixed(1)} s`;
  };
  const b = () => { r().bucket ??= { litres: '10', seconds: [] }; return r().bucket; };
  // only a run writes the mean; what was typed since stays, whatever is drawn anew
  const sum = (write) => {
    const [litres, list] = [parse(b().litres), b().seconds];
    if (!(litres > 0) || !list.length) {
      out.textContent = list.length ? `${list.length} ${list.length > 1 ? 'runs' : 'run'}: ${list.map((s) => s.toFixed(1)).join(', ')} s. Give the litres, and they become a flow.` : '';
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
    if (begun()) {
      b().seconds.push((now() - begun()) / 1000);
      clearInterval(ticking);
      b().begun = null;
      go.textContent = 'Start again';
      c.save();
      sum(true);
    } else {
      b().begun = now();
      c.save();
      go.textContent = 'Full';
      ticking = setInterval(tick, 100);
    }
  } }, begun() ? 'Full' : 'Start');
  if (begun()) {
    box.open = true;
    ticking = setInterval(tick, 100);
  }
  box.addEventListener('toggle', () => {
    if (box.open && box.children.length === 1) {
      box.append(numberField('Bucket, litres', b().litres, (text) => { b().litres = text; c.save(); sum(r().timed || !r().value); }), watch,
        h('div', { className: 'row' }, go, h('button', { onclick: () => { b().seconds.pop(); c.save(); sum(r().timed); } }, 'Drop the last run')), out);
      sum(false);
    }
  });
  return box;
}

/** What a vessel in the open can be. */
const GAS = { least: -40, most: 60, unit: '°C' };
/** The pre-charge for this lift, or why there is none. */
export function charge(c, i) {
  const pump = (i.pumps || [])[0];
  const designed = i.precharge ? ` The design says ${number(i.precharge)} bar.` : '';
  const box = (...inside) => h('details', null, h('summary', { className: 'button', 'data-at': `charge ${i.id}` }, 'What pre-charge?'), inside);
  const none = !i.lift ? 'The register has no lift here: nothing to work it out from.' : pump && pump.model && pump.vessel !== 'BLADDER' ? 'This model has no bladder: there is nothing to charge.' : '';
  if (none) {
    return box(h('p', null, none + designed));
  }
  const told = preCharge(i.lift, 10, pump?.bar ? pump.bar * BAR : Infinity);
  const out = h('p', { role: 'status' });
  const bar = (pa) => `${(pa / BAR).toFixed(1)} bar`;
  const show = (t) => { out.textContent = told.charge === null ? told.why : `Set ${bar(atTemperature(told.charge, 10, t, air(c.site.alt || 0)))} on a vessel at ${t} °C${t === 10 ? '' : `: it is ${bar(told.charge)} at 10 °C`} (lift ${number(i.lift)} m: ${told.why}).${designed} Common practice, no standard gives it; the maker's figure comes first.${pump?.bar ? '' : ' The register knows no pressure rating here: read the plate.'}`; };
  show(10);
  return box(numberField('Vessel and gas, °C', '10', (text) => { const t = parse(text); if (t !== null && !wrongNumber(text, GAS)) { show(t); } else { out.textContent = ''; } }, GAS), out);
}

const perDay = (si) => si * 86400000;
const thousands = (n) => number(n, n < 10000 ? 4 : 3);
/** What the quote promised of the dry month, beside what is measured. */
export function promise(i, si) {
  const [low, high] = i.promised;
  const range = `The quote promised ${thousands(low)} to ${thousands(high)} l/day in the dry month, ${number(low / 1440)} to ${number(high / 1440)} l/min`;
  const now = si > 0 && perDay(si);
  return now ? `${range}: ${thousands(now)} l/day now are ${now < low ? 'less' : now > high ? 'more' : 'within it'}.` : `${range}.`;
}
