// Putting a pump to work, step by step. The list is data of the office; hold points are ticked or explained.
import { h, field, number } from './dom.js';
import { db } from './data.js';

const read = (text) => { const t = String(text ?? '').trim().replace(',', '.'); return t === '' || Number.isNaN(Number(t)) ? null : Number(t); };
/** The edition the visit began with; the office may have written a newer one since. */
const listOf = (d) => d.list || db.data.checklists.find((c) => c.id === d.checklist);

/** Hold points without tick and without words. */
export const unanswered = (d) => (listOf(d)?.items || []).filter((i) => i.hold && !d.checks[i.code]?.done && !d.checks[i.code]?.why?.trim())
  .map((i) => `Tick or explain: ${i.text}.`)
  .concat((listOf(d)?.items || []).some((i) => i.caution === 'PRESSURE' && d.checks[i.code]?.done) && !d.cautions.PRESSURE ? ['Read the caution about stored pressure.'] : []);

/** Of the settings that the dry month can feed, the one that delivers most. */
export function best(steps, dryFlow) {
  const fit = steps.map((s, n) => ({ n, drive: read(s.drive), delivered: read(s.delivered) })).filter((s) => s.delivered !== null && (dryFlow === null || (s.drive !== null && s.drive <= dryFlow)));
  return fit.length ? fit.reduce((a, b) => (b.delivered > a.delivered ? b : a)).n : null;
}

export function commissioning(c, danger) {
  const list = listOf(c.d);
  if (!list) {
    return null;
  }
  return [h('h2', null, `Commissioning, list ${list.edition}`), list.items.map((item) => {
    const x = () => { c.d.checks[item.code] ??= { done: false, why: '' }; return c.d.checks[item.code]; };
    const now = c.d.checks[item.code];
    return [item.caution ? danger(c, item.caution, true) : null,
      h('label', { className: 'tick' }, h('input', { type: 'checkbox', checked: !!now?.done, onchange: (e) => { x().done = e.target.checked; c.again(); } }), `${item.text}${item.hold ? ' (hold point)' : ''}`),
      item.hold && !now?.done ? field('Or why not', h('input', { type: 'text', value: now?.why || '', oninput: (e) => { x().why = e.target.value; c.save(); } })) : null,
      item.steps ? steps(c) : null];
  })];
}

function steps(c) {
  const out = h('div');
  const draw = () => {
    const n = best(c.d.steps, read(c.d.dryFlow));
    out.replaceChildren(...[plot(c.d.steps), n === null ? null : h('p', { className: 'note' }, `Best for the dry month: setting ${c.d.steps[n].setting || n + 1}, ${number(read(c.d.steps[n].delivered))} l/min.`)].filter(Boolean));
  };
  const typed = (s, key, label) => field(label, h('input', { type: 'text', inputMode: key === 'setting' ? 'text' : 'decimal', value: s[key] || '', oninput: (e) => { s[key] = e.target.value; c.save(); draw(); } }));
  draw();
  return [field('Dry-month flow, l/min', h('input', { type: 'text', inputMode: 'decimal', value: c.d.dryFlow || '', oninput: (e) => { c.d.dryFlow = e.target.value; c.save(); draw(); } })),
    c.d.steps.map((s) => h('div', { className: 'row' }, typed(s, 'setting', 'Setting'), typed(s, 'drive', 'Drive, l/min'), typed(s, 'delivered', 'Delivered, l/min'))),
    h('div', { className: 'row' }, h('button', { onclick: () => { c.d.steps.push({ setting: '', drive: '', delivered: '' }); c.again(); } }, 'Next setting')), out];
}

function plot(list) {
  const points = list.map((s) => [read(s.drive), read(s.delivered)]).filter(([a, b]) => a !== null && b !== null).sort((a, b) => a[0] - b[0]);
  if (points.length < 2) {
    return null;
  }
  const [x1, y1] = [Math.max(...points.map((p) => p[0])) * 1.1, Math.max(...points.map((p) => p[1])) * 1.15];
  const at = ([x, y]) => [40 + 270 * x / x1, 150 - 130 * y / y1];
  return h('svg', { class: 'plot', viewBox: '0 0 330 180', role: 'img', 'aria-label': 'Delivered flow by drive flow' },
    h('path', { d: 'M40 10V150H320' }), h('path', { class: 'curve', d: `M${points.map((p) => at(p).join(' ')).join('L')}` }),
    points.map((p) => h('circle', { cx: at(p)[0], cy: at(p)[1], r: 4 })),
    h('text', { x: 40, y: 170 }, '0'), h('text', { x: 300, y: 170 }, number(x1)), h('text', { x: 110, y: 170 }, 'drive flow, l/min'), h('text', { x: 4, y: 20 }, number(y1)), h('text', { x: 4, y: 8 }, 'l/min'));
}
