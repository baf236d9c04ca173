// Dangers to acknowledge once in a visit, at the step where they matter.
import { h } from './dom.js';

const DANGERS = {
  PRESSURE: ['Stored pressure', 'Shut the drive side first, then the delivery. Release, and prove zero on a gauge before any joint is opened. Charge a vessel only empty of water and off pressure. Local codes and licensed practice come first.'],
  CHAMBER: ['Confined chamber', 'Never enter alone. Air it, test the air, have somebody outside who can call for help. Local rules for confined spaces come first.'],
  WATER: ['Drinking water', 'Disinfect only downstream of the isolated pump. No backflow into the source or another house: shut what joins. Keep people and stock from drinking until it is flushed. Neutralise chlorine, or spread it on ground far from water, before it can reach a stream. Local health rules come first.'],
};

/** A caution that was not acknowledged is no wall: the visit goes out, and says so. */
export const unacknowledged = (code) => {
  const name = { PRESSURE: 'stored pressure', CHAMBER: 'the confined chamber', WATER: 'drinking water' }[code];
  return { say: `Read the caution about ${name}.`, note: `The caution about ${name} was not acknowledged.` };
};

export function caution(c, code, when) {
  // the first place where it matters is enough
  if (!when || c.cautioned.has(code)) {
    return null;
  }
  c.cautioned.add(code);
  const [title, text] = DANGERS[code];
  return h('div', { className: 'caution' }, h('strong', null, title), text,
    c.d.cautions[code] ? h('p', null, '✓ Understood') : h('div', { className: 'row' }, h('button', { onclick: () => { c.d.cautions[code] = new Date().toISOString(); c.again(); } }, 'I have read this')));
}
