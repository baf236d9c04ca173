// Bucket and watch: litres and seconds as l/min while they are typed. The server works it out again.
document.addEventListener('input', (event) => {
  const row = event.target.closest('.bucket');
  if (!row) {
    return;
  }
  const [litres, seconds] = [...row.querySelectorAll('input')].map((field) => Number(field.value.trim().replace(',', '.')));
  const right = litres >= 0 && seconds > 0 && row.querySelector('input').value.trim() !== '';
  row.querySelector('output').textContent = right ? `${Number(((litres * 60) / seconds).toPrecision(4))} l/min` : '';
});
