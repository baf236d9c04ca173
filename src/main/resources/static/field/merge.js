// Two windows on one visit: what either of them wrote since they last agreed is kept.
const same = (a, b) => JSON.stringify(a) === JSON.stringify(b);
const plain = (x) => x !== null && typeof x === 'object';
const keyOf = (x) => (plain(x) ? x.k : x);

/** Gives each entry of each list a key, by its place or, for a new one, its own. */
export function keyed(x, key) {
  Object.entries(x).filter(([name, v]) => plain(v) && name !== 'list').forEach(([, v]) => {
    if (Array.isArray(v)) {
      v.forEach((item, n) => { if (plain(item)) { item.k ??= key(n); } });
    }
    keyed(v, key);
  });
  return x;
}

function lists(base, theirs, mine, also) {
  const find = (list, x) => list.find((y) => keyOf(y) === keyOf(x));
  const left = (x) => { const b = find(base, x); return b === undefined || !same(b, x); };
  const both = theirs.filter((t) => find(mine, t) !== undefined || left(t)).map((t) => { const m = find(mine, t); return m === undefined ? t : merge(find(base, t), t, m, also); });
  const own = mine.filter((m) => find(theirs, m) === undefined && left(m));
  mine.splice(0, mine.length, ...both, ...own);
  return mine;
}

/**
 * Takes into mine what they changed since base. Where both wrote different words in one field mine stay, and theirs go to
 * the list of what was typed as well.
 */
export function merge(base, theirs, mine, also) {
  if (same(theirs, base) || same(theirs, mine)) {
    return mine;
  }
  if (Array.isArray(mine) && Array.isArray(theirs)) {
    return lists(base || [], theirs, mine, also);
  }
  if (plain(mine) && plain(theirs)) {
    for (const name of new Set([...Object.keys(theirs), ...Object.keys(mine)])) {
      mine[name] = merge(base?.[name], theirs[name], mine[name], also);
    }
    return mine;
  }
  if (same(mine, base) || mine === undefined || mine === null || mine === '') {
    return theirs;
  }
  if (typeof theirs === 'string' && typeof mine === 'string') {
    if (theirs.includes(mine)) {
      return theirs;
    }
    if (theirs.trim() && !mine.includes(theirs)) {
      also.push(theirs);
    }
  }
  return mine;
}

/** The words in mine that are not in base. */
export const fresh = (base, mine) => (typeof mine === 'string' ? [mine].filter((text) => text.trim() && text !== base)
  : plain(mine) ? Object.entries(mine).filter(([name]) => name !== 'k').flatMap(([name, v]) => fresh(plain(base) ? base[name] : undefined, v)) : []);
