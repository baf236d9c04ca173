// Drinking water and hygiene: sample, disinfection, cleaning between catchments.
import { h, field } from './dom.js';
import { unacknowledged } from './caution.js';
import { marked } from './numbers.js';

const DATE = /^\d{4}-\d\d-\d\d$/;
const minutes = (text) => { const t = String(text ?? '').trim(); return /^\d{1,5}$/.test(t) ? Number(t) : null; };
const words = (text) => text?.trim() || null;

/** One result a line: parameter; value; unit. */
const results = (text) => (text || '').split('\n').filter((line) => line.trim()).map((line) => {
  const [parameter, value, ...unit] = line.split(';').map((part) => part.trim());
  return { parameter, value: value || '', unit: unit.join('; ') || null };
});

/** Takes a sample's words; the first one stands in the record itself. */
const samplesOf = (w) => [w, ...(w.more || [])];
const typedIn = (c, w) => (key, label, more = {}, hint) => field(label, h(more.rows ? 'textarea' : 'input', { ...(more.rows ? {} : { type: 'text' }), maxLength: 300, autocomplete: 'off', value: w[key] || '', ...more, oninput: (e) => { w[key] = e.target.value; c.save(); } }), hint);

function sample(c, w, n, all) {
  const typed = typedIn(c, w);
  return [h('h3', null, all > 1 ? `Sample ${n + 1}` : 'Sample'), typed('sample', 'Sample taken: number'), typed('where', 'Taken where, for what'), typed('time', 'Taken at', { type: 'time' }), typed('laboratory', 'Laboratory'),
    typed('results', 'Results', { rows: 3, maxLength: 4000 }, 'one a line: parameter; value; unit. What the laboratory writes later is added at the desk'), typed('result', 'Remark'),
    typed('next', 'Next sample on', { type: 'date', value: DATE.test(w.next) ? w.next : '' }),
    n ? h('button', { onclick: () => { c.d.water.more.splice(n - 1, 1); c.again(); } }, `Take sample ${n + 1} away`) : null];
}

export function water(c, caution) {
  const w = c.d.water;
  const typed = typedIn(c, w);
  const time = h('input', { type: 'text', inputMode: 'numeric', maxLength: 300, autocomplete: 'off', value: w.contact || '', oninput: () => { w.contact = time.value; c.save(); see(); } });
  const contact = field('Contact time, minutes', time);
  const see = marked(contact, time, (text) => (text.trim() && minutes(text) === null ? `“${text.trim()}” is no number of minutes.` : ''));
  return h('details', { open: Object.keys(w).length > 0 || undefined }, h('summary', { className: 'button' }, 'Water sample, disinfection, cleaning'),
    samplesOf(w).map((one, n, all) => sample(c, one, n, all.length)), h('div', { className: 'row' }, h('button', { onclick: () => { w.more = [...(w.more || []), {}]; c.again(); } }, 'Another sample')),
    h('h3', null, 'Disinfection'), caution(c, 'WATER', true),
    h('label', { className: 'tick' }, h('input', { type: 'checkbox', checked: !!w.isolated, onchange: (e) => { w.isolated = e.target.checked; c.again(); } }), 'Pump isolated; dosed only downstream of it'),
    w.isolated ? null : typed('notIsolated', 'Or why it was not isolated'),
    typed('product', 'Product'), typed('strength', 'Strength'), contact, typed('flushed', 'Flushed where to, until when'),
    h('h3', null, 'Before the next catchment'), typed('cleaned', 'Boots and tools cleaned with'));
}

const dosing = (w) => ['product', 'strength', 'contact', 'flushed', 'notIsolated'].some((key) => words(w[key]));
const lacking = (w) => results(w.results).filter((r) => !r.parameter || !r.value);
const later = (w, on) => DATE.test(w.next) && w.next > on;

/** What is not said of water and hygiene as it should be, and the words in which it goes along. */
export function waterEnds({ water: w, cautions, on }) {
  const ends = samplesOf(w).flatMap((s) => {
    const [short] = lacking(s);
    return [short && { say: `Each result is a parameter, its value and its unit: “${short.parameter || short.value}” lacks one.`, note: `Water results as typed: ${words(s.results).replaceAll('\n', ' | ')}`, data: true },
      DATE.test(s.next) && !later(s, on) && { say: 'The next sample is due after this one.', note: `Next sample as typed: ${s.next}`, data: true }];
  });
  return [...ends,
    dosing(w) && !cautions.WATER && unacknowledged('WATER'),
    dosing(w) && !w.isolated && !words(w.notIsolated) && { say: 'Disinfect only downstream of the isolated pump: tick that it was isolated, or say why it was not.', note: 'Disinfected; it was not said whether the pump was isolated.' },
    dosing(w) && !words(w.product) && { say: 'Say with which product it was disinfected.', note: `Disinfected, product not named: ${[w.strength, w.contact, w.flushed, w.notIsolated].filter(words).join(', ')}`, data: true },
    words(w.contact) && minutes(w.contact) === null && { say: `Contact time: “${w.contact}” is no number of minutes.`, note: `Contact time as typed: ${w.contact}`, data: true }].filter(Boolean);
}

/** What an older page let be typed as the next sample's time stays as words. */
export const waterWords = ({ water: w }) => (words(w.next) && !DATE.test(w.next) ? `Next sample: ${w.next.trim()}` : '');

const sampleSent = (w, on) => ({ sample: words(w.sample), where: words(w.where), result: words(w.result), laboratory: words(w.laboratory), next: later(w, on) ? w.next : null,
  results: results(w.results).filter((r) => r.parameter && r.value), takenTime: /^\d\d:\d\d$/.test(w.time || '') ? w.time : null });
const said = (sent) => Object.entries(sent).some(([key, x]) => (key === 'results' ? x.length : key !== 'takenTime' && x !== null && x !== false));

export function waterSent({ water: w, on }) {
  const named = words(w.product);
  const care = { product: named, strength: named && words(w.strength), contactMinutes: named && minutes(w.contact), flushed: named && words(w.flushed), isolated: !!w.isolated,
    notIsolated: named && !w.isolated ? words(w.notIsolated) || 'not said' : null, cleaned: words(w.cleaned) };
  const more = (w.more || []).map((s) => sampleSent(s, on)).filter(said);
  const first = sampleSent(w, on);
  return said(first) || said(care) || more.length ? { ...first, ...care, more } : null;
}
