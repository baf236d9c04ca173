// Which install something is about, where a site has more than one.
import { field, choose } from './dom.js';

const SITE = 'SITE';

/** Asks for the install; where there is one, there is nothing to ask. With `site`, the whole site is an answer too. */
export function where(c, x, label, { site = false, then = null } = {}) {
  if (c.installs.length < 2) {
    return null;
  }
  const list = c.installs.map((i) => [i.id, i.name]).concat(site ? [[SITE, 'The whole site']] : []);
  return field(label, choose(list, x.install || (x.whole ? SITE : null), (v) => { Object.assign(x, { whole: v === SITE, install: v === SITE ? null : v }); then?.(); c.again(); }, 'choose'));
}

/** The install where a site has just one. */
export const only = (installs) => (installs.length === 1 ? installs[0].id : null);

/** Nobody has said yet where it was. */
export const unplaced = (installs, x) => installs.length > 1 && !x.whole && !installs.some((i) => i.id === x.install);
