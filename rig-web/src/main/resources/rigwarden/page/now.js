import { charts } from './charts.js';

const link = document.getElementById('link');

function show(message) {
  for (const [id, text] of Object.entries(message.words)) {
    const element = document.getElementById(id);
    if (element) element.textContent = text;
  }
  for (const [id, mark] of Object.entries(message.marks)) {
    const element = document.getElementById(id);
    if (element) element.dataset.mark = mark;
  }
  for (const [id, markup] of Object.entries(message.parts)) {
    const element = document.getElementById(id);
    if (element) element.innerHTML = markup;
  }
}

function listen() {
  const source = new EventSource('/live');
  source.addEventListener('now', event => {
    show(JSON.parse(event.data));
    link.textContent = '';
    link.dataset.mark = 'live';
  });
  source.addEventListener('error', () => {
    link.textContent = 'No connection: what you see is old. STOP may still reach the rig.';
    link.dataset.mark = 'lost';
    if (source.readyState === EventSource.CLOSED) setTimeout(() => location.reload(), 5000);
  });
}

listen();
charts(document.getElementById('charts'), 5000);
