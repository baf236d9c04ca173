// Makes elements. Text is always text, so what people typed can never become markup.
export function h(tag, props, ...children) {
  const svg = ['svg', 'path', 'circle', 'text', 'g'].includes(tag);
  const el = svg ? document.createElementNS('http://www.w3.org/2000/svg', tag) : document.createElement(tag);
  for (const [name, value] of Object.entries(props || {})) {
    if (name.startsWith('on')) {
      el.addEventListener(name.slice(2), value);
    } else if (!svg && name in el && name !== 'list' && name !== 'form') {
      el[name] = value;
    } else if (value !== null && value !== undefined && value !== false) {
      el.setAttribute(name, value === true ? '' : value);
    }
  }
  el.append(...children.flat(Infinity).filter((child) => child !== null && child !== undefined && child !== false && child !== ''));
  return el;
}

let counted = 0;
/** A label with its field. */
export function field(label, input, hint) {
  const id = `f${++counted}`;
  input.id = id;
  const said = hint ? h('span', { className: 'hint', id: `${id}h` }, hint) : null;
  if (said) {
    input.setAttribute('aria-describedby', said.id);
  }
  return h('p', { className: 'field' }, h('label', { htmlFor: id }, label), said, input);
}

export function choose(options, value, onchange, empty) {
  const select = h('select', { onchange: () => onchange(select.value || null) },
    empty === undefined ? null : h('option', { value: '' }, empty),
    options.map(([key, word]) => h('option', { value: key, selected: key === value }, word)));
  return select;
}

const DAY = new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' });
const MOMENT = new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });
export const day = (iso) => (iso ? DAY.format(new Date(`${iso}T12:00:00`)).replace(',', '') : 'not known');
export const moment = (at) => MOMENT.format(new Date(at)).replace(',', '');

export function number(value, digits = 3) {
  return value === null || value === undefined ? '–' : Number(Number(value).toPrecision(digits)).toLocaleString('en-GB', { maximumFractionDigits: 6 });
}

/** Reads what was typed, with comma or point; null if it is no number. */
export const parse = (text) => { const t = String(text ?? '').trim().replace(',', '.'); return /^-?(\d+(\.\d+)?|\.\d+)$/.test(t) ? Number(t) : null; };
