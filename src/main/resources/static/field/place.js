// A page drawn anew keeps where the person was: focus, cursor, and what was folded open.
const PLACES = 'input, select, textarea, button, a, summary';
// what stands there more than once says by `at` which one it is
const named = (el) => `${el.tagName} ${el.dataset.at || el.labels?.[0]?.textContent || el.getAttribute('aria-label') || el.textContent}`;

/** Notes the place; the answer goes back to it. */
export function keepPlace(root) {
  const at = document.activeElement;
  const within = root.contains(at) && at !== root;
  const list = [...root.querySelectorAll(PLACES)];
  const index = list.indexOf(at);
  const name = within && named(at);
  const nth = list.slice(0, index).filter((el) => named(el) === name).length;
  const cursor = within && at.matches('textarea, input[type=text]') ? [at.selectionStart, at.selectionEnd] : null;
  const open = new Set([...root.querySelectorAll('details[open] > summary')].map(named));
  return () => {
    [...root.querySelectorAll('details > summary')].filter((s) => open.has(named(s))).forEach((s) => { s.parentElement.open = true; });
    if (!within) {
      return;
    }
    const now = [...root.querySelectorAll(PLACES)];
    const found = now.filter((el) => named(el) === name)[nth] || (now[index]?.tagName === at.tagName ? now[index] : null);
    found?.focus({ preventScroll: true });
    if (found && cursor && found.matches('textarea, input[type=text]')) {
      found.setSelectionRange(...cursor);
    }
  };
}
