// Drags a visit to another place of the week. Each visit's own page does the same without a script.
document.addEventListener('DOMContentLoaded', () => {
  const week = document.querySelector('.week');
  const form = document.getElementById('drop');
  if (!week || !form) {
    return;
  }
  let dragged = null;

  const target = (event) => {
    const list = event.target.closest('[data-to]');
    return list && dragged ? {list, before: event.target.closest('li[data-stop]')} : null;
  };
  const clear = () => week.querySelectorAll('.drop').forEach((mark) => mark.classList.remove('drop'));

  week.addEventListener('dragstart', (event) => {
    const stop = event.target.closest('[data-stop]');
    if (stop) {
      dragged = stop.dataset.stop;
      event.dataTransfer.setData('text/plain', dragged);
      event.dataTransfer.effectAllowed = 'move';
    }
  });
  week.addEventListener('dragover', (event) => {
    const to = target(event);
    if (to) {
      event.preventDefault();
      clear();
      (to.before || to.list).classList.add('drop');
    }
  });
  week.addEventListener('dragleave', clear);
  week.addEventListener('dragend', () => {
    dragged = null;
    clear();
  });
  week.addEventListener('drop', (event) => {
    const to = target(event);
    if (!to) {
      return;
    }
    event.preventDefault();
    const before = to.before && to.before.dataset.stop !== dragged ? to.before.dataset.stop : '';
    form.elements.to.value = to.list.dataset.to;
    form.elements.before.value = before;
    form.action = `${week.dataset.base}${dragged}/move`;
    form.submit();
  });
});

// When the optimiser has ended, the page shows its plan.
document.addEventListener('htmx:afterSettle', (event) => {
  const was = document.body.dataset.working === 'yes';
  const works = document.querySelector('.news .progress') !== null;
  document.body.dataset.working = works ? 'yes' : 'no';
  if (was && !works && event.target.closest('.news')) {
    window.location.reload();
  }
});
document.addEventListener('DOMContentLoaded', () => {
  document.body.dataset.working = document.querySelector('.news .progress') ? 'yes' : 'no';
});
