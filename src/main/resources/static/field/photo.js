// Photos are drawn anew on the phone: smaller, and without the position the camera wrote into them.
import { h, field } from './dom.js';
import * as store from './store.js';

const MOST = 1600;

/** A JPEG of at most 1600 points a side. */
async function smaller(file) {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const scale = Math.min(1, MOST / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext('2d').drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', 0.8));
}

async function keep(c, blob, caption, kind, id = crypto.randomUUID()) {
  await store.put('photos', { id, entry: c.d.id, blob, caption, kind, taken: new Date().toISOString() });
  if (!c.d.photos.includes(id)) {
    c.d.photos.push(id);
  }
  await c.save();
  return id;
}

export function photoPart(c) {
  const list = h('div', { className: 'row' });
  const said = h('p', { role: 'status' });
  const show = async () => {
    const found = (await Promise.all(c.d.photos.map((id) => store.get('photos', id)))).filter((p) => p && p.id !== c.d.signature);
    list.replaceChildren(...found.map((p) => h('div', null, h('img', { className: 'thumb', src: URL.createObjectURL(p.blob), alt: p.caption || 'Photo without words' }),
      field('Says', h('input', { type: 'text', maxLength: 300, value: p.caption || '', oninput: async (e) => { p.caption = e.target.value; await store.put('photos', p); } })),
      h('button', { 'aria-pressed': String(p.kind === 'GATE'), onclick: async () => { p.kind = p.kind === 'GATE' ? 'WORK' : 'GATE'; await store.put('photos', p); show(); } }, 'Shows the gate'),
      h('button', { onclick: async () => { c.d.photos = c.d.photos.filter((id) => id !== p.id); await c.save(); await store.remove('photos', p.id); show(); } }, 'Take it away'))));
  };
  show();
  const input = h('input', { type: 'file', accept: 'image/*', multiple: true, onchange: async () => {
    for (const file of input.files) {
      try {
        await keep(c, await smaller(file), '', 'WORK');
        said.textContent = '';
      } catch (failure) {
        said.textContent = failure.name === 'QuotaExceededError' ? 'The phone is full: this photo is not kept. The words are. Send what waits, or make room, and take it again.' : 'This file is no picture that the phone can read.';
      }
    }
    input.value = '';
    show();
  } });
  return [h('h2', null, 'Photos'), field('Take or choose photos', input), said, list];
}

export function signaturePart(c) {
  const canvas = h('canvas', { width: 900, height: 340, 'aria-label': 'Customer signs here', role: 'img' });
  const pen = canvas.getContext('2d');
  const white = () => { pen.fillStyle = '#fff'; pen.fillRect(0, 0, 900, 340); };
  white();
  Object.assign(pen, { lineWidth: 5, lineCap: 'round', strokeStyle: '#111' });
  if (c.d.signature) {
    store.get('photos', c.d.signature).then(async (p) => { if (p) { pen.drawImage(await createImageBitmap(p.blob), 0, 0); } });
  }
  const at = (e) => { const box = canvas.getBoundingClientRect(); return [(e.clientX - box.left) * 900 / box.width, (e.clientY - box.top) * 340 / box.height]; };
  let down = false;
  canvas.addEventListener('pointerdown', (e) => { down = true; canvas.setPointerCapture(e.pointerId); pen.beginPath(); pen.moveTo(...at(e)); });
  canvas.addEventListener('pointermove', (e) => { if (down) { pen.lineTo(...at(e)); pen.stroke(); } });
  canvas.addEventListener('pointerup', () => {
    down = false;
    canvas.toBlob(async (blob) => { c.d.signature = await keep(c, blob, 'Signature of the customer', 'SIGNATURE', c.d.signature || undefined); await c.save(); }, 'image/jpeg', 0.8);
  });
  return [h('p', { className: 'soft' }, 'Signature'), canvas, h('div', { className: 'row' }, h('button', { onclick: async () => {
    const old = c.d.signature;
    white();
    c.d.photos = c.d.photos.filter((id) => id !== old);
    c.d.signature = null;
    await c.save();
    if (old) {
      await store.remove('photos', old);
    }
  } }, 'Clear the signature'))];
}
