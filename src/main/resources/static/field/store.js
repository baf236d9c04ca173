// All that is on the phone. Version 1; a later version only adds stores, so nothing unsent is ever dropped.
import { clear } from './pictures.js';

let opened;

function open() {
  opened ??= new Promise((resolve, reject) => {
    const asked = indexedDB.open('ramkeeper-field', 1);
    asked.onupgradeneeded = () => {
      const db = asked.result;
      for (const name of ['kv', 'drafts', 'outbox', 'photos']) {
        if (!db.objectStoreNames.contains(name)) {
          db.createObjectStore(name, name === 'kv' ? undefined : { keyPath: 'id' });
        }
      }
    };
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
  return opened;
}

/** Runs steps in one transaction and waits until the phone says that it is kept. */
async function within(stores, mode, steps) {
  const db = await open();
  return new Promise((resolve, reject) => {
    const tx = db.transaction(stores, mode, { durability: 'strict' });
    let why;
    const asked = steps((name) => tx.objectStore(name), (failure) => { why = failure; tx.abort(); });
    tx.oncomplete = () => resolve(asked && asked.result);
    tx.onabort = tx.onerror = () => reject(why || tx.error);
  });
}

/** A full phone gives up the photos it took along before a word or photo of today is lost. */
async function write(stores, steps) {
  try {
    return await within(stores, 'readwrite', steps);
  } catch (full) {
    if (full?.name !== 'QuotaExceededError') {
      throw full;
    }
    await clear().catch(() => {});
    return within(stores, 'readwrite', steps);
  }
}

export const get = (store, key) => within([store], 'readonly', (of) => of(store).get(key));
export const all = (store) => within([store], 'readonly', (of) => of(store).getAll());
export const put = (store, value, key) => write([store], (of) => { of(store).put(value, key); });
export const remove = (store, key) => within([store], 'readwrite', (of) => { of(store).delete(key); });

/** Changes a draft in one step with its reading, so that two windows never overwrite each other; the step gets nothing if it is gone. */
export const change = (id, step) => write(['drafts'], (of, fail) => {
  const asked = of('drafts').get(id);
  asked.onsuccess = () => {
    try {
      const next = step(asked.result);
      if (next) {
        of('drafts').put(next);
      }
    } catch (failure) {
      fail(failure);
    }
  };
});

/** A finished visit leaves the drafts and joins the outbox in one step. */
export const finish = (entry) => write(['drafts', 'outbox'], (of) => {
  of('outbox').put(entry);
  of('drafts').delete(entry.id);
});

/** A parked visit goes back to be mended, with what was typed. */
export const mend = (entry, draft) => within(['drafts', 'outbox'], 'readwrite', (of) => {
  of('drafts').put(draft);
  of('outbox').delete(entry.id);
});

/** Throws an unfinished visit away, with its photos. */
export const discard = (draft) => within(['drafts', 'photos'], 'readwrite', (of) => {
  of('drafts').delete(draft.id);
  draft.photos.forEach((id) => of('photos').delete(id));
});

/** After signing out the firm's data is gone and what waits is not read; it is kept and sent after the next sign-in. */
export const signedOut = () => forget().then(() => put('kv', true, 'signedOut'));

/** Forgets the firm's data; what is not sent stays. */
export const forget = () => clear().catch(() => {}).then(() => within(['kv'], 'readwrite', (of) => { of('kv').delete('bundle'); of('kv').delete('etag'); of('kv').delete('seen'); }));
