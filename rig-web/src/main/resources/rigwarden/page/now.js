import { charts } from './charts.js';

const link = document.getElementById('link');
const told = document.getElementById('told');
const silentAfter = 6000;
const staleAfter = 5000;
let heard = Date.now();
let seen = Date.now();

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

function say(mark, text) {
  link.dataset.mark = mark;
  if (link.textContent !== text) link.textContent = text;
}

function lost() {
  say('lost', 'No connection: what you see is old. STOP may still reach the rig.');
}

function listen() {
  const source = new EventSource('/live');
  source.addEventListener('now', event => {
    heard = seen = Date.now();
    show(JSON.parse(event.data));
    say('live', '');
  });
  source.addEventListener('here', () => { heard = Date.now(); });
  source.addEventListener('error', () => {
    lost();
    if (source.readyState === EventSource.CLOSED) setTimeout(() => location.reload(), 5000);
  });
}

async function lay(name) {
  const said = document.getElementById('laid-said');
  try {
    const answer = await fetch('/spot.txt', { method: 'POST', body: new URLSearchParams({ spot: name }) });
    said.textContent = (await answer.text()).split('\n')[0];
  } catch {
    said.textContent = 'Not kept: no connection.';
  }
}

for (const place of document.querySelectorAll('[data-spot]')) {
  place.addEventListener('click', () => lay(place.dataset.spot));
  place.addEventListener('keydown', event => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      lay(place.dataset.spot);
    }
  });
}

setInterval(() => {
  const now = Date.now();
  if (now - heard > silentAfter) {
    lost();
  } else if (told.dataset.mark !== 'over' && now - seen > staleAfter && link.dataset.mark !== 'lost') {
    const seconds = Math.round((now - seen) / 1000);
    say('stale', `No scan for ${seconds} s: what you see is old. A loop that stands still opens the contactor within a second.`);
  }
}, 1000);

listen();
charts(document.getElementById('charts'), 5000);
