// Photos and drawings of the week's own visits and of pinned sites. They lie in a store of their own, for they can always be
// fetched again: where room is short, they go first.
let opened;

function open() {
  opened ??= new Promise((resolve, reject) => {
    const asked = indexedDB.open('ramkeeper-pictures', 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore('pictures');
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
  return opened;
}

async function within(mode, step) {
  const db = await open();
  return new Promise((resolve, reject) => {
    const tx = db.transaction('pictures', mode);
    const asked = step(tx.objectStore('pictures'));
    tx.oncomplete = () => resolve(asked.result);
    tx.onabort = tx.onerror = () => reject(tx.error);
  });
}

export const keysHere = () => within('readonly', (store) => store.getAllKeys());
export const picture = (key) => within('readonly', (store) => store.get(key));
const drop = (key) => within('readwrite', (store) => store.delete(key));
/** Throws all away: to make room, or because the phone is given away. */
export const clear = () => within('readwrite', (store) => store.clear());

/** Room that is left to what people write. */
const RESERVE = 30e6;

async function room() {
  const { quota, usage } = await (navigator.storage?.estimate?.() || {});
  return quota === undefined || quota - usage > RESERVE;
}

/** One picture, if it came whole: a portal's page or half an answer does not fit the hash. */
async function load(key) {
  const answer = await fetch(`/field/pictures/${key}`, { redirect: 'manual', cache: 'no-store', credentials: 'same-origin', signal: AbortSignal.timeout(120000) });
  const bytes = await answer.arrayBuffer();
  const hash = btoa(String.fromCharCode(...new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))));
  if (answer.status === 200 && answer.headers.get('Repr-Digest') === `sha-256=:${hash}:`) {
    return new Blob([bytes], { type: answer.headers.get('Content-Type') });
  }
  if (answer.status === 404) {
    return null;
  }
  throw new Error('no answer of our server');
}

async function take(wanted, busy, tell) {
  const keys = new Set(wanted.map((p) => p.key));
  const here = new Set(await keysHere());
  for (const key of here) {
    if (!keys.has(key)) {
      await drop(key);
    }
  }
  for (const key of keys) {
    if (here.has(key)) {
      continue;
    }
    if (await busy()) {
      return '';
    }
    if (!await room()) {
      return 'full';
    }
    const blob = await load(key);
    if (blob) {
      await within('readwrite', (store) => store.put(blob, key));
      tell();
    }
  }
  return '';
}

/**
 * Drops what no longer goes along and fetches what is missing, one by one, as long as nothing written waits to be sent.
 * Says why it stopped: nothing, or that the phone is full.
 */
export async function takePictures(wanted, busy, tell) {
  const run = async () => {
    try {
      return await take(wanted, busy, tell);
    } catch (failure) {
      // no signal, or signed out: the next time goes on where this one ended
      return failure.name === 'QuotaExceededError' ? 'full' : '';
    }
  };
  return navigator.locks ? navigator.locks.request('ramkeeper-pictures', { ifAvailable: true }, (lock) => (lock ? run() : '')) : run();
}
