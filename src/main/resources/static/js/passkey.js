// Passkeys: what only a script can ask of the browser. The buttons show up only where the browser knows passkeys.
const bytes = (text) => Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), (c) => c.charCodeAt(0));
const text = (buffer) => btoa(String.fromCharCode(...new Uint8Array(buffer))).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');

async function post(path, body) {
  const csrf = document.querySelector('meta[name=csrf]');
  const answer = await fetch(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Accept: 'application/json', [csrf.dataset.header]: csrf.content },
    body: body ? JSON.stringify(body) : null,
  });
  if (answer.status === 401 && path.startsWith('/account')) {
    window.location.assign('/account/confirm?next=/account/passkeys/new');
  }
  if (!answer.ok) {
    throw new Error(String(answer.status));
  }
  return answer.status === 204 ? null : answer.json();
}

async function use(box) {
  const options = await post(`${box.dataset.passkey}/options`);
  options.challenge = bytes(options.challenge);
  options.allowCredentials = (options.allowCredentials || []).map((key) => ({ ...key, id: bytes(key.id) }));
  const key = await navigator.credentials.get({ publicKey: options });
  const answer = await post(`${box.dataset.passkey}?next=${encodeURIComponent(box.dataset.next || '/')}`, {
    id: key.id, rawId: text(key.rawId), type: key.type, clientExtensionResults: key.getClientExtensionResults(),
    authenticatorAttachment: key.authenticatorAttachment,
    response: {
      authenticatorData: text(key.response.authenticatorData), clientDataJSON: text(key.response.clientDataJSON),
      signature: text(key.response.signature),
      userHandle: key.response.userHandle ? text(key.response.userHandle) : undefined,
    },
  });
  window.location.assign(answer.next);
}

async function make(box) {
  const options = await post(`${box.dataset.passkeyNew}/options`);
  options.challenge = bytes(options.challenge);
  options.user.id = bytes(options.user.id);
  options.excludeCredentials = (options.excludeCredentials || []).map((key) => ({ ...key, id: bytes(key.id) }));
  const key = await navigator.credentials.create({ publicKey: options });
  await post(`${box.dataset.passkeyNew}?label=${encodeURIComponent(box.querySelector('input').value)}`, {
    id: key.id, rawId: text(key.rawId), type: key.type, clientExtensionResults: key.getClientExtensionResults(),
    authenticatorAttachment: key.authenticatorAttachment,
    response: {
      attestationObject: text(key.response.attestationObject), clientDataJSON: text(key.response.clientDataJSON),
      transports: key.response.getTransports ? key.response.getTransports() : [],
    },
  });
  window.location.assign(box.dataset.next);
}

if (window.PublicKeyCredential) {
  for (const box of document.querySelectorAll('[data-passkey], [data-passkey-new]')) {
    box.hidden = false;
    box.querySelector('button').addEventListener('click', async () => {
      const problem = box.querySelector('[role=alert]');
      problem.textContent = '';
      try {
        await (box.dataset.passkey ? use(box) : make(box));
      } catch (refused) {
        problem.textContent = box.dataset.refused;
      }
    });
  }
}
