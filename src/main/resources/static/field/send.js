// The outbox: words first, then photos, oldest first, one at a time, by one tab. Nothing leaves the phone before the server's
// JSON has repeated its id and hash.
import * as store from './store.js';

let state = { busy: false, needSignIn: false, offline: false, next: 0 };
let timer;
let soon;
const listeners = new Set();
export const onChange = (listener) => listeners.add(listener);
export const status = () => state;
function tell(change) {
  state = { ...state, ...change };
  listeners.forEach((listener) => listener());
}

class Offline extends Error {}
class Refused extends Error {}

/** A JSON answer of our server, or null for anything else: a sign-in page, a captive portal, half an answer. */
export async function ask(path, options = {}) {
  let answer;
  try {
    answer = await fetch(path, { ...options, redirect: 'manual', cache: 'no-store', credentials: 'same-origin',
      headers: { Accept: 'application/json', ...options.headers }, signal: AbortSignal.timeout(120000) });
  } catch (failure) {
    throw new Offline(failure.message);
  }
  const type = answer.headers.get('Content-Type') || '';
  let body = null;
  if (type.includes('json')) {
    try {
      body = await answer.json();
    } catch (broken) {
      body = null;
    }
  }
  return { status: answer.status, body, etag: answer.headers.get('ETag'), wait: Number(answer.headers.get('Retry-After')) || 0 };
}

let session = null;

/** Who is signed in, by the server; notes how far this phone's clock is off. */
export async function whoIs(again) {
  if (session && !again) {
    return session;
  }
  const before = Date.now();
  const answer = await ask('/field/session');
  if (answer.status !== 200 || !answer.body?.person) {
    session = null;
    if (answer.status === 401 || answer.status === 403) {
      tell({ needSignIn: true });
      return null;
    }
    throw new Offline('no answer of our server');
  }
  session = answer.body;
  const ahead = Math.round(((before + Date.now()) / 2 - Date.parse(session.now)) / 1000);
  await store.put('kv', { person: session.person, name: session.name }, 'who');
  await store.put('kv', ahead, 'clock');
  await store.remove('kv', 'signedOut');
  await deviceOf(session.person, true);
  tell({ needSignIn: false });
  return session;
}

/** This phone's key for a person; its private half cannot be read out. */
export async function deviceOf(person, register) {
  const kept = await store.get('kv', `device:${person}`);
  if (kept || !register || !crypto.subtle) {
    return kept;
  }
  const pair = await crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, ['sign', 'verify']);
  const key = base64(await crypto.subtle.exportKey('spki', pair.publicKey));
  const answer = await post('/field/devices', JSON.stringify({ key }), 'application/json');
  if (answer.status !== 200 || !answer.body?.id) {
    return null;
  }
  const device = { id: answer.body.id, key: pair.privateKey };
  await store.put('kv', device, `device:${person}`);
  return device;
}

const post = (path, body, type, headers) => ask(path, { method: 'POST', body,
  headers: { 'Content-Type': type, [session.csrfHeader]: session.csrf, ...headers } });

const base64 = (buffer) => btoa(String.fromCharCode(...new Uint8Array(buffer)));
export async function sha256(data) {
  const bytes = typeof data === 'string' ? new TextEncoder().encode(data) : data;
  return [...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))].map((b) => b.toString(16).padStart(2, '0')).join('');
}

/** Closes the envelope of a visit: hash and signature under its writer. */
export async function seal(visit, person, photos) {
  const text = JSON.stringify(visit);
  const hash = await sha256(text);
  const device = await deviceOf(person, false);
  const signature = device ? base64(await crypto.subtle.sign({ name: 'ECDSA', hash: 'SHA-256' }, device.key,
    new TextEncoder().encode(`${visit.id}.${hash}`))) : null;
  return { id: visit.id, person, site: visit.site, visit: visit.visit, text, hash, device: device?.id || null, signature, photos,
    at: Date.now(), state: 'WAITING', tries: 0, next: 0 };
}

/** Takes along what the server has; true if something came. */
export const fetchBundle = () => take().catch((failure) => { tell({ offline: failure instanceof Offline }); throw failure; });
async function take() {
  if (!await whoIs(true)) {
    return false;
  }
  const etag = await store.get('kv', 'etag');
  const answer = await ask('/field/bundle', { headers: etag ? { 'If-None-Match': etag } : {} });
  if (answer.status === 200 && answer.body?.sites) {
    await store.put('kv', { at: Date.now(), person: session.person, data: answer.body }, 'bundle');
    await store.put('kv', answer.etag, 'etag');
  } else if (answer.status === 304) {
    const kept = await store.get('kv', 'bundle');
    await store.put('kv', { ...kept, at: Date.now() }, 'bundle');
  } else {
    return false;
  }
  tell({ offline: false });
  return true;
}

/** Pins a site or takes the pin away; says what stood against it, or nothing. */
export async function pin(site, pinned) {
  if (!await whoIs(true)) {
    return 'Signed out: sign in first.';
  }
  for (let tries = 0; tries < 3; tries++) {
    const now = await ask('/field/pins');
    if (now.status !== 200 || !now.body?.sites) {
      break;
    }
    const sites = now.body.sites.filter((id) => id !== site).concat(pinned ? [site] : []);
    const answer = await ask('/field/pins', { method: 'PUT', body: JSON.stringify({ sites }), headers: { 'Content-Type': 'application/json', 'If-Match': now.etag, [session.csrfHeader]: session.csrf } });
    if (answer.status === 200 && answer.body?.sites) {
      return '';
    }
    // pinned elsewhere meanwhile: look again
    if (answer.status !== 412) {
      return answer.body?.detail || 'No signal: pin it where there is one.';
    }
  }
  return 'No signal: pin it where there is one.';
}

/** Something written waits: nothing else is to use the line. */
export const writing = async () => state.busy || (await store.all('outbox')).some((e) => e.state === 'WAITING' || e.state === 'PHOTOS');

/** Sends what waits. A button, the page's opening, coming online and a timer all end here; two tabs never both send. */
export function send(now) {
  if (!navigator.locks) {
    return run(now);
  }
  return navigator.locks.request('ramkeeper-outbox', { ifAvailable: true }, (lock) => {
    if (lock) {
      return run(now);
    }
    // a signal may come back while the last attempt is still failing
    if (now) {
      clearTimeout(soon);
      soon = setTimeout(() => send(true), 250);
    }
    return null;
  });
}

async function run(now) {
  clearTimeout(timer);
  tell({ busy: true });
  try {
    const waiting = (await store.all('outbox')).filter((e) => e.state === 'WAITING' || e.state === 'PHOTOS').sort((a, b) => a.at - b.at);
    if (!waiting.length) {
      return;
    }
    if (!await whoIs(true)) {
      return;
    }
    for (const entry of waiting.filter((e) => e.state === 'WAITING' && (now || e.next <= Date.now()))) {
      await sendWords(entry);
    }
    for (const entry of (await store.all('outbox')).filter((e) => e.state === 'PHOTOS' && (now || e.next <= Date.now())).sort((a, b) => a.at - b.at)) {
      await sendPhotos(entry);
    }
    tell({ offline: false });
  } catch (failure) {
    if (!(failure instanceof Offline) && !(failure instanceof Refused)) {
      throw failure;
    }
    tell({ offline: failure instanceof Offline });
  } finally {
    tell({ busy: false });
    await again();
  }
}

/** Tries again by itself: each item has its own time, a dead network half a minute. */
async function again() {
  const waiting = (await store.all('outbox')).filter((e) => e.state === 'WAITING' || e.state === 'PHOTOS');
  if (waiting.length && !state.needSignIn) {
    const next = Math.min(...waiting.map((e) => e.next));
    timer = setTimeout(() => send(false), Math.max(state.offline ? 30000 * (0.75 + Math.random() / 2) : 1000, next - Date.now()));
  }
}

/** Sends with a fresh proof once, if the old one was refused. */
async function carry(path, body, type, id) {
  let answer = await post(path, body, type, { 'Idempotency-Key': id });
  if (answer.status === 401 || answer.status === 403) {
    if (!await whoIs(true)) {
      throw new Refused();
    }
    answer = await post(path, body, type, { 'Idempotency-Key': id });
    if (answer.status === 401 || answer.status === 403) {
      tell({ needSignIn: true });
      throw new Refused();
    }
  }
  return answer;
}

const mendable = (code) => code >= 400 && code < 500 && ![401, 403, 408, 409, 425, 429].includes(code);

async function later(item, answer) {
  const tries = item.tries + 1;
  const wait = Math.max(answer.wait * 1000, Math.min(900000, 2000 * 2 ** tries) * (0.5 + Math.random() / 2));
  await store.put('outbox', { ...item, tries, next: Date.now() + wait });
  if (answer.status === 429 || answer.status === 503 || !answer.body) {
    throw new Refused();
  }
}

async function sendWords(entry) {
  const body = JSON.stringify({ id: entry.id, person: entry.person, device: entry.device, text: entry.text, hash: entry.hash,
    signature: entry.signature, sentAt: new Date().toISOString() });
  const answer = await carry('/field/entries', body, 'application/json', entry.id);
  if (answer.status === 200 && answer.body?.id === entry.id && answer.body.hash === entry.hash) {
    const left = entry.photos.length;
    await store.put('outbox', { ...entry, state: left ? 'PHOTOS' : 'SENT', result: answer.body.result, text: left ? entry.text : null, tries: 0, next: 0, sentAt: Date.now() });
  } else if (mendable(answer.status) && answer.body) {
    await store.put('outbox', { ...entry, state: 'PARKED', why: answer.body.problems?.map((p) => p.sentence) || [answer.body.detail || 'Refused.'] });
  } else {
    await later(entry, answer);
  }
  tell({});
}

async function sendPhotos(entry) {
  let left = entry.photos;
  for (const id of entry.photos) {
    const photo = await store.get('photos', id);
    if (photo) {
      const bytes = await photo.blob.arrayBuffer();
      const hash = await sha256(bytes);
      const query = new URLSearchParams({ entry: entry.id, hash, kind: photo.kind || '', caption: photo.caption || '', taken: photo.taken || '' });
      const answer = await carry(`/field/photos?${query}`, bytes, 'application/octet-stream', id);
      if (!(answer.status === 200 && answer.body?.id === id && answer.body.hash === hash)) {
        if (mendable(answer.status) && answer.body) {
          await store.put('outbox', { ...entry, photos: left, state: 'PARKED_PHOTO', why: [answer.body.detail || 'A photo was refused.'] });
          return;
        }
        await later({ ...entry, photos: left }, answer);
        return;
      }
    }
    left = left.filter((other) => other !== id);
    await store.put('outbox', { ...entry, photos: left, state: left.length ? 'PHOTOS' : 'SENT', text: left.length ? entry.text : null });
    await store.remove('photos', id);
    tell({});
  }
}
