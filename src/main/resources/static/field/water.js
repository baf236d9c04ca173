// Drinking water and hygiene: sample, disinfection, cleaning between catchments.
import { h, field } from './dom.js';

const DATE = /^\d{4}-\d\d-\d\d$/;
const minutes = (text) => { const t = String(text ?? '').trim(); return /^\d{1,5}$/.test(t) ? Number(t) : null; };
const words = (text) => text?.trim() || null;

/** One result a line: parameter; value; unit. */
const results = (text) => (text || '').split('\n').filter((line) => line.trim()).map((line) => {
  const [parameter, value, ...unit] = line.split(';').map((part) => part.trim());
  return { parameter, value: value || '', unit: unit.join('; ') || null };
});

export function water(c, caution) {
  const w = c.d.water;
  const typed = (key, label, more = {}, hint) => field(label, h(more.rows ? 'textarea' : 'input', { ...(more.rows ? {} : { type: 'text' }), maxLength: 300, autocomplete: 'off', value: w[key] || '', ...more, oninput: (e) => { w[key] = e.target.value; c.save(); } }), hint);
  return h('details', { open: Object.keys(w).length > 0 || undefined }, h('summary', { className: 'button' }, 'Water sample, disinfection, cleaning'),
    h('h3', null, 'Sample'), typed('sample', 'Sample taken: number'), typed('where', 'Taken where, for what'), typed('time', 'Taken at', { type: 'time' }), typed('laboratory', 'Laboratory'),
    typed('results', 'Results', { rows: 3, maxLength: 4000 }, 'one a line: parameter; value; unit. What the laboratory writes later is added at the desk'), typed('result', 'Remark'),
    typed('next', 'Next sample on', { type: 'date', value: DATE.test(w.next) ? w.next : '' }),
    h('h3', null, 'Disinfection'), caution(c, 'WATER', true),
    h('label', { className: 'tick' }, h('input', { type: 'checkbox', checked: !!w.isolated, onchange: (e) => { w.isolated = e.target.checked; c.save(); } }), 'Pump isolated; dosed only downstream of it'),
    typed('product', 'Product'), typed('strength', 'Strength'), typed('contact', 'Contact time, minutes', { inputMode: 'numeric' }), typed('flushed', 'Flushed where to, until when'),
    h('h3', null, 'Before the next catchment'), typed('cleaned', 'Boots and tools cleaned with'));
}

export function waterProblems({ water: w, cautions, on }) {
  const dosed = ['product', 'strength', 'contact', 'flushed'].some((key) => words(w[key]));
  const short = results(w.results).find((r) => !r.parameter || !r.value);
  return [short && `Each result is a parameter, its value and its unit: “${short.parameter || short.value}” lacks one.`,
    DATE.test(w.next) && w.next <= on && 'The next sample is due after this one.',
    dosed && !cautions.WATER && 'Read the caution about drinking water.',
    dosed && !w.isolated && 'Disinfect only downstream of the isolated pump: tick that it was isolated.',
    dosed && !words(w.product) && 'Say with which product it was disinfected.',
    words(w.contact) && minutes(w.contact) === null && `Contact time: “${w.contact}” is no number of minutes.`].filter(Boolean);
}

/** What an older page let be typed as the next sample's time stays as words. */
export const waterWords = ({ water: w }) => (words(w.next) && !DATE.test(w.next) ? `Next sample: ${w.next.trim()}` : '');

export function waterSent({ water: w }) {
  const sent = { sample: words(w.sample), where: words(w.where), result: words(w.result), laboratory: words(w.laboratory), next: DATE.test(w.next) ? w.next : null, product: words(w.product), strength: words(w.strength),
    contactMinutes: minutes(w.contact), flushed: words(w.flushed), isolated: !!w.isolated, cleaned: words(w.cleaned) };
  const list = results(w.results);
  if (!list.length && !Object.values(sent).some((x) => x !== null && x !== false)) {
    return null;
  }
  return { ...sent, results: list, takenTime: /^\d\d:\d\d$/.test(w.time || '') ? w.time : null };
}
