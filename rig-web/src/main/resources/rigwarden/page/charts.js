const NAMES = { cells: 'Cells, V', current: 'Current, A (into the cells is positive)', warmth: 'Temperatures, °C' };
const HEIGHT = 190;
const MINUTE = 60;
const STEPS = [1, 5, 15, MINUTE, 5 * MINUTE, 15 * MINUTE, 30 * MINUTE,
  ...[1, 2, 3, 6, 12, 24, 48].map(hour => hour * 60 * MINUTE)];

/** Colours of so many lines, told apart by hue; readable by day and by night. */
function colour(index, count) {
  const night = matchMedia('(prefers-color-scheme: dark)').matches;
  const hue = Math.round(200 + index * 360 / Math.max(count, 3)) % 360;
  return `hsl(${hue} ${night ? '60% 66%' : '70% 36%'})`;
}

function css(name) {
  return getComputedStyle(document.documentElement).getPropertyValue(name).trim();
}

/** Each span becomes two points, its lowest and its highest value: a spike of one scan is a stroke at any zoom. */
function doubled(trace) {
  const t = trace.t;
  const x = [];
  t.forEach((from, i) => {
    const to = i + 1 < t.length ? t[i + 1] : from;
    x.push(from, (from + to) / 2);
  });
  return { x, y: line => line.low.flatMap((low, i) => [low, line.high[i]]) };
}

function hours(seconds) {
  const whole = Math.round(seconds);
  const pad = n => String(n).padStart(2, '0');
  const rest = whole % 60 === 0 ? '' : `:${pad(whole % 60)}`;
  return `${Math.floor(whole / 3600)}:${pad(Math.floor(whole / 60) % 60)}${rest}`;
}

function made(place, name, lines, data, zoomed) {
  const grid = { stroke: css('--rule'), width: 1 };
  const axis = { stroke: css('--faint'), grid, ticks: grid, font: '12px system-ui, sans-serif' };
  const title = document.createElement('p');
  title.className = 'chart-name';
  title.textContent = NAMES[name];
  place.append(title);
  return new uPlot({
    width: place.clientWidth, height: HEIGHT,
    cursor: { sync: { key: 'night' }, drag: { x: true, y: false } },
    scales: { x: { time: false } },
    axes: [{ ...axis, incrs: STEPS, space: 64, values: (_, ticks) => ticks.map(hours) }, { ...axis, size: 58 }],
    series: [
      { label: 'at', value: (_, v) => v == null ? '' : hours(v) },
      ...lines.map((line, i) => ({ label: line.name, stroke: colour(i, lines.length), width: 1.2, spanGaps: false,
        value: (_, v) => v == null ? '' : v,
        points: { show: false } })),
    ],
    hooks: { setSelect: [plot => zoomed(plot)] },
  }, data, place);
}

/** Draws the three charts of a section from its own source; refreshes them every so many milliseconds, 0 for never. */
export function charts(section, every) {
  if (!section) return;
  const plots = new Map();
  let window = null;

  async function draw() {
    const width = Math.max(200, Math.min(1000, section.clientWidth));
    const range = window ? `&from=${window[0].toFixed(1)}&to=${window[1].toFixed(1)}` : '';
    const answer = await fetch(`${section.dataset.src}?buckets=${Math.round(width / 1.5)}${range}`).catch(() => null);
    if (!answer || !answer.ok) return;
    const trace = await answer.json();
    const { x, y } = doubled(trace);
    for (const name of Object.keys(NAMES)) {
      const lines = trace.lines.filter(line => line.chart === name);
      const data = [x, ...lines.map(y)];
      const place = document.getElementById(`chart-${name}`);
      if (plots.has(name)) plots.get(name).setData(data);
      else if (x.length > 0) plots.set(name, made(place, name, lines, data, zoomed));
    }
    section.dataset.drawn = String(x.length);
  }

  function zoomed(plot) {
    if (plot.select.width < 4) return;
    const from = plot.posToVal(plot.select.left, 'x');
    const to = plot.posToVal(plot.select.left + plot.select.width, 'x');
    window = [Math.max(0, from), Math.max(0.1, to)];
    plot.setSelect({ left: 0, width: 0, top: 0, height: 0 }, false);
    draw();
  }

  section.addEventListener('dblclick', () => { window = null; draw(); });
  addEventListener('resize', () => plots.forEach((plot, name) => plot.setSize({
    width: document.getElementById(`chart-${name}`).clientWidth, height: HEIGHT })));
  draw();
  if (every > 0) setInterval(() => { if (!window && !document.hidden) draw(); }, every);
}
