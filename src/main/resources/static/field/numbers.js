// Numbers as people type them: what cannot be is said beside the field at once, and the text stays.
import { h, field, parse } from './dom.js';

/** What is wrong with a number as typed, in words; nothing if it can be. */
export function wrongNumber(text, { least = 0, most = Infinity, unit = '' } = {}) {
  const typed = String(text ?? '').trim();
  const value = parse(typed);
  return !typed ? '' : value === null ? `“${typed}” is no number.`
    : value < least ? (least === 0 ? `“${typed}” is below zero.` : `“${typed}” is less than can be: ${least} ${unit} at the least.`)
      : value > most ? `“${typed}” is more than can be: ${most.toLocaleString('en-GB')} ${unit} at the most.` : '';
}

/** Puts words beside a field while it needs them; the answer looks again. */
export function marked(box, input, words) {
  const mark = h('span', { className: 'wrong', role: 'status', id: `${input.id}w` });
  input.setAttribute('aria-describedby', [input.getAttribute('aria-describedby'), mark.id].filter(Boolean).join(' '));
  box.append(mark);
  const see = () => {
    // the decimals may still follow
    mark.textContent = words(input.value.replace(/[.,]$/, ''));
    input.setAttribute('aria-invalid', String(mark.textContent !== ''));
  };
  see();
  return see;
}

export function numberField(label, value, write, bounds = {}, hint = null) {
  const input = h('input', { type: 'text', inputMode: 'decimal', autocomplete: 'off', value: value ?? '', oninput: () => { write(input.value); see(); } });
  const box = field(label, input, hint);
  const see = marked(box, input, (text) => bounds.says?.(text) || wrongNumber(text, bounds));
  return box;
}
