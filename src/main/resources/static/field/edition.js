// A page that was open while the application was updated goes on by its old rules until it is loaded anew: that is said, and left to the person.
const MINE = import.meta.url.split('/').at(-2);

let other = false;
const listeners = new Set();
export const onNewer = (listener) => listeners.add(listener);
/** Whether this phone holds another edition than this page is of. */
export const newer = () => other;

/** Looks at the shell that would be loaded now. */
async function compare() {
  const answer = await fetch('/field').catch(() => null);
  const held = answer?.ok && (await answer.text()).match(/\/field\/app\/(\w+)\/app\.js/)?.[1];
  if (held && (held !== MINE) !== other) {
    other = !other;
    listeners.forEach((listener) => listener());
  }
}

const worker = navigator.serviceWorker;
worker?.addEventListener('controllerchange', compare);
const look = async () => (await worker?.getRegistration())?.update();
// a browser by itself asks for a newer worker only when a page is opened
const ask = () => { if (!document.hidden && navigator.onLine) { look().catch(() => {}); } };
document.addEventListener('visibilitychange', ask);
addEventListener('online', ask);
setInterval(ask, 1800000);

/** Loads the page anew if all that was typed is kept; what is not stays in the page, which says so. */
export async function renew(kept) {
  if (await kept()) {
    location.reload();
  }
}
