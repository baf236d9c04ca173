// Putting a pump to work, step by step. The list is data of the office; hold points are ticked or explained.
import { h, field, number, parse } from './dom.js';
import { marked, numberField, wrongNumber } from './numbers.js';
import { db, installsOf } from './data.js';
import { charge, promise } from './readings.js';
import { only, where } from './where.js';

/** Common practice, without source. */
const STARTING = 'The delivery is open before the first beat. Push the valve down with a rod or a gloved palm, and keep fingers out of it once it moves: it shuts with the whole weight of the water behind it. Never stop the pump by the delivery valve.';

const read = (text) => (wrongNumber(text) ? null : parse(text));
/** The edition the visit began with; the office may have written a newer one since. */
const listOf = (d) => d.list || db.data.checklists.find((c) => c.id === d.checklist);

/** The newest list for the pump model of one of these installs, else the one for all models. */
export const listFor = (installs) => db.data.checklists.find((c) => c.model && installs.some((i) => (i.pumps || []).some((p) => p.modelId === c.model))) || db.data.checklists.find((c) => !c.model) || null;

const waits = (i) => !i.commissioned && i.known;
/** The install to begin with: the only one that waits to be put to work, or else that runs. */
export const likely = (installs) => only(installs) || only(installs.filter(waits)) || only(installs.filter((i) => i.state === 'RUNNING'));

/** The install that is commissioned, once it is said. */
export const commissioned = (d) => d.install || only(installsOf(d.site));

/** The installs whose readings are asked for: of a commissioning the one, unless more are wanted or written down. */
export const measured = (c) => {
  const one = c.d.kind === 'COMMISSIONING' && !c.d.others && commissioned(c.d);
  return c.installs.filter((i) => !one || i.id === one || Object.entries(c.d.readings).some(([key, r]) => key.startsWith(i.id) && String(r.value).trim()));
};

/** The install put to work, where the register knows no pump in it. */
const bare = (d) => { const i = db.installs.get(commissioned(d)); return i && !i.pumps?.length ? i : null; };
/** The pump as its plate was read; nothing where the register knows it. */
export const plate = (d) => (bare(d) && [d.pump?.model?.trim(), d.pump?.serial?.trim() && `serial ${d.pump.serial.trim()}`].filter(Boolean).join(', ')) || null;
export const nameless = (d) => d.kind === 'COMMISSIONING' && d.outcome === 'DONE' && bare(d) && !plate(d) && { say: `No pump stands in ${bare(d).name} in the register: give model and serial from its plate.`, note: 'The pump that was put to work was not named.' };

/** Hold points without tick and without words. */
export const unanswered = (d) => (listOf(d)?.items || []).filter((i) => i.hold && !d.checks[i.code]?.done && !d.checks[i.code]?.why?.trim())
  .map((i) => `Tick or explain: ${i.text}.`);

/** A step under stored pressure was done. */
export const underPressure = (d) => (listOf(d)?.items || []).some((i) => i.caution === 'PRESSURE' && d.checks[i.code]?.done);

/** Flows that are no numbers, by name. */
export const unread = (d) => [...d.steps.flatMap((s, n) => [[`Drive flow at setting ${s.setting || n + 1}`, s.drive], [`Delivered flow at setting ${s.setting || n + 1}`, s.delivered]]), ['Dry-month flow', d.dryFlow]].filter(([, text]) => wrongNumber(text));

/** The dry setting ends before it begins. */
export const backwards = (d) => !!d.dryFrom && !!d.dryUntil && d.dryUntil < d.dryFrom;

/** Of the settings that the dry month can feed, the one that delivers most. */
export function best(steps, dryFlow) {
  const fit = steps.map((s, n) => ({ n, drive: read(s.drive), delivered: read(s.delivered) })).filter((s) => s.delivered !== null && (dryFlow === null || (s.drive !== null && s.drive <= dryFlow)));
  return fit.length ? fit.reduce((a, b) => (b.delivered > a.delivered ? b : a)).n : null;
}

export function commissioning(c, danger) {
  const list = listOf(c.d);
  const chosen = () => {
    const install = c.installs.filter((i) => i.id === c.d.install);
    // a list that was begun stays
    if (install.length && !Object.keys(c.d.checks).length) {
      const fits = listFor(install);
      Object.assign(c.d, { checklist: fits?.id || null, list: fits });
    }
  };
  const i = db.installs.get(commissioned(c.d));
  const typed = (key, label) => field(label, h('input', { type: 'text', maxLength: 100, autocomplete: 'off', value: c.d.pump?.[key] || '', oninput: (e) => { c.d.pump = { ...c.d.pump, [key]: e.target.value }; c.save(); } }));
  return [h('h2', null, `Commissioning${list ? `, list ${list.edition}` : ''}`), where(c, c.d, 'Install that is put to work', { then: chosen }), i?.promised ? h('p', { className: 'note' }, promise(i)) : null,
    bare(c.d) ? [h('p', null, 'The register knows no pump here yet. From its plate:'), h('div', { className: 'row' }, typed('model', 'Pump model'), typed('serial', 'Pump serial'))] : null, (list?.items || []).map((item) => {
    const x = () => { c.d.checks[item.code] ??= { done: false, why: '' }; return c.d.checks[item.code]; };
    const now = c.d.checks[item.code];
    return [item.caution ? danger(c, item.caution, true) : null, item.code === 'START' ? h('p', { className: 'caution' }, STARTING) : null,
      h('label', { className: 'tick' }, h('input', { type: 'checkbox', checked: !!now?.done, onchange: (e) => { x().done = e.target.checked; c.again(); } }), `${item.text}${item.hold ? ' (hold point)' : ''}`),
      item.hold && !now?.done ? field('Or why not', h('input', { type: 'text', value: now?.why || '', oninput: (e) => { x().why = e.target.value; c.save(); } })) : null,
      item.code === 'CHARGE' && i ? charge(c, i) : null, item.steps ? steps(c) : null];
  })];
}

function steps(c) {
  const { d } = c;
  const out = h('div');
  const draw = () => {
    const dry = read(d.dryFlow);
    const [n, wet] = [best(d.steps, dry), best(d.steps, null)];
    const say = (k) => `setting ${d.steps[k].setting || k + 1}, ${number(read(d.steps[k].delivered))} l/min`;
    const day = (key, label) => field(label, h('input', { type: 'date', value: d[key] || '', oninput: (e) => { d[key] = e.target.value || null; c.save(); } }));
    out.replaceChildren(...[plot(d.steps, dry, n),
      n === null ? (d.steps.length > 0 && dry !== null && (d.steps.some((s) => read(s.drive) !== null && read(s.delivered) !== null) ? h('p', { className: 'caution' }, 'The dry month feeds none of these settings: try a smaller one.') : h('p', { className: 'note' }, 'Give drive and delivered flow of each setting: then the best for the dry month is said.'))) : h('p', { className: 'note' }, `Best for the dry month: ${say(n)}.`),
      n !== null && wet !== n && h('p', { className: 'note' }, `While there is more water: ${say(wet)}. Leave one setting, or agree on two with dates.`),
      n !== null && wet !== n && h('div', { className: 'row' }, day('dryFrom', 'Dry setting from'), day('dryUntil', 'Dry setting until'))].filter(Boolean));
  };
  const words = (s, key, label) => field(label, h('input', { type: 'text', value: s[key] || '', oninput: (e) => { s[key] = e.target.value; c.save(); draw(); seeLeft(); } }));
  const typed = (s, key, label) => numberField(label, s[key], (text) => { s[key] = text; c.save(); draw(); });
  const locked = h('input', { type: 'text', maxLength: 200, autocomplete: 'off', value: d.leftSetting || '', oninput: () => { d.leftSetting = locked.value; c.save(); seeLeft(); } });
  const left = field('Left and locked at setting', locked, 'goes into the register with this install');
  const names = () => d.steps.map((s) => s.setting?.trim()).filter(Boolean);
  const seeLeft = marked(left, locked, (text) => (text.trim() && names().length && !names().some((name) => text.includes(name)) ? 'None of the settings tried above: is it right?' : ''));
  draw();
  return [numberField('Dry-month flow, l/min', d.dryFlow, (text) => { d.dryFlow = text; c.save(); draw(); }),
    d.steps.map((s, n) => h('div', { className: 'row three', role: 'group', 'aria-label': `Setting ${n + 1}` }, words(s, 'setting', 'Setting'), typed(s, 'drive', 'Drive, l/min'), typed(s, 'delivered', 'Delivered, l/min'))),
    h('div', { className: 'row' }, h('button', { onclick: () => { d.steps.push({ setting: '', drive: '', delivered: '' }); c.again(); } }, 'Next setting'),
      d.steps.length ? h('button', { onclick: () => { d.steps.pop(); c.again(); } }, 'Drop the last setting') : null), out,
    left];
}

/** Delivered flow by drive flow; a bar where the dry month ends, a ring around the best setting. */
function plot(list, dry, n) {
  const points = list.map((s) => [read(s.drive), read(s.delivered)]);
  const line = points.filter(([a, b]) => a !== null && b !== null).sort((a, b) => a[0] - b[0]);
  if (line.length < 2) {
    return null;
  }
  const [x1, y1] = [Math.max(dry || 0, ...line.map((p) => p[0])) * 1.1 || 1, Math.max(...line.map((p) => p[1])) * 1.15 || 1];
  const at = ([x, y]) => [40 + 270 * x / x1, 150 - 130 * y / y1];
  const ring = n !== null && points[n][0] !== null && at(points[n]);
  const bar = dry !== null && at([dry, 0])[0];
  return h('svg', { class: 'plot', viewBox: '0 0 330 180', role: 'img', 'aria-label': `Delivered flow by drive flow, ${line.length} settings${ring ? `; the best for the dry month delivers ${number(points[n][1])} l/min` : ''}` },
    h('path', { d: 'M40 10V150H320' }), h('path', { class: 'curve', d: `M${line.map((p) => at(p).join(' ')).join('L')}` }),
    bar !== false && h('path', { class: 'dry', d: `M${bar} 10V150` }), bar !== false && h('text', { x: bar > 250 ? bar - 4 : bar + 4, y: 20, 'text-anchor': bar > 250 ? 'end' : 'start' }, 'dry month'),
    line.map((p) => h('circle', { cx: at(p)[0], cy: at(p)[1], r: 4 })), ring && h('circle', { class: 'ring', cx: ring[0], cy: ring[1], r: 9 }),
    h('text', { x: 36, y: 170 }, '0'), h('text', { x: 320, y: 170, 'text-anchor': 'end' }, number(x1)), h('text', { x: 180, y: 170, 'text-anchor': 'middle' }, 'drive flow, l/min'), h('text', { x: 36, y: 22, 'text-anchor': 'end' }, number(y1, 2)), h('text', { x: 4, y: 9 }, 'delivered, l/min'));
}
