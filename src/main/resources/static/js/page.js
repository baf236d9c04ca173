// Small helps on every page; all of them work without script too.
document.addEventListener('DOMContentLoaded', () => {
  const summary = document.querySelector('[data-focus]');
  if (summary) {
    summary.focus();
  }
});

// A fragment request whose sign-in has ended must reload the page, not land in the fragment.
document.addEventListener('htmx:beforeSwap', (event) => {
  if (event.detail.xhr.status === 401) {
    window.location.reload();
  } else if (event.detail.xhr.status === 422) {
    event.detail.shouldSwap = true;
    event.detail.isError = false;
  }
});

// htmx requests carry the proof of same origin from the page's head.
document.addEventListener('htmx:configRequest', (event) => {
  const csrf = document.querySelector('meta[name=csrf]');
  if (csrf) {
    event.detail.headers[csrf.dataset.header] = csrf.content;
  }
});

// One click, one record: a second submit of the same form is held back.
document.addEventListener('submit', (event) => {
  const form = event.target;
  if (form.method !== 'post') {
    return;
  }
  if (form.dataset.sent) {
    event.preventDefault();
    return;
  }
  form.dataset.sent = 'yes';
  window.setTimeout(() => delete form.dataset.sent, 4000);
});

// A password can be looked at while it is typed; the button is reached by keyboard like any other.
document.addEventListener('DOMContentLoaded', () => {
  for (const field of document.querySelectorAll('[data-showable]')) {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'link show';
    button.textContent = 'Show';
    button.setAttribute('aria-pressed', 'false');
    button.setAttribute('aria-label', `Show: ${field.labels[0] ? field.labels[0].textContent : ''}`);
    button.addEventListener('click', () => {
      const shown = field.type === 'text';
      field.type = shown ? 'password' : 'text';
      button.setAttribute('aria-pressed', String(!shown));
    });
    field.after(button);
  }
});

// After signing out the phone's pages forget the firm's sites; what is not sent stays on the phone.
if (window.location.pathname === '/sign-in' && new URLSearchParams(window.location.search).has('out')) {
  navigator.serviceWorker?.getRegistration().then((phone) => phone && import('/field/app/now/store.js').then((store) => store.signedOut()));
}
