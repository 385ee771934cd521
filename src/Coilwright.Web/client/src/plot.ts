import uPlot from 'uplot';

/** What the server writes beside the table of a response: frequencies, and one gain curve per load. */
interface Curves {
  frequencyHz: number[];
  curves: { name: string; gainDb: (number | null)[]; dashed: boolean; stroke: number | null }[];
  peakHz: number | null;
}

/** Strokes that tell curves apart without colour. */
const dashes = [[], [10, 5], [2, 4], [12, 4, 2, 4], [6, 3], [1, 6]];

/** Draws every response figure inside a part of the page. */
export function drawPlots(within: ParentNode): void {
  for (const place of within.querySelectorAll<HTMLElement>('[data-curves]')) {
    draw(place, JSON.parse(place.dataset.curves ?? '{}') as Curves);
  }
}

function draw(place: HTMLElement, data: Curves): void {
  const look = getComputedStyle(document.documentElement);
  const ink = look.getPropertyValue('--ink').trim();
  const soft = look.getPropertyValue('--line').trim();
  const colours = [look.getPropertyValue('--copper').trim(), ink];
  const axis: uPlot.Axis = { stroke: ink, grid: { stroke: soft, width: 1 }, ticks: { stroke: soft }, font: '14px system-ui' };
  place.replaceChildren();
  const plot = new uPlot(
    {
      width: Math.max(260, place.clientWidth),
      height: 260,
      legend: { show: false },
      cursor: { y: false },
      scales: {
        x: { time: false, distr: 3, log: 10, range: (_, low, high) => [low, high] },
        y: { range: (_, low, high) => [Math.max(-30, Math.floor(low / 6) * 6), Math.ceil((high + 2) / 6) * 6] },
      },
      axes: [
        { ...axis, label: 'frequency, Hz', labelFont: '14px system-ui', values: (_, ticks) => ticks.map(hertz) },
        { ...axis, label: 'gain, dB', labelFont: '14px system-ui', size: 48 },
      ],
      series: [
        {},
        ...data.curves.map((curve, index): uPlot.Series => ({
          label: curve.name,
          stroke: colours[index % colours.length] ?? ink,
          width: curve.stroke !== null && curve.stroke >= dashes.length ? 1.25 : 2,
          points: { show: false },
          dash: curve.stroke === null ? (curve.dashed ? [6, 4] : []) : (dashes[curve.stroke % dashes.length] ?? []),
        })),
      ],
      hooks: { draw: [self => markPeak(self, data.peakHz, ink)], setCursor: [self => read(place, data, self.cursor.idx ?? null)] },
    },
    [data.frequencyHz, ...data.curves.map(curve => curve.gainDb)],
    place,
  );
  readBySlider(place, data, plot);
  new ResizeObserver(() => plot.setSize({ width: Math.max(260, place.clientWidth), height: 260 })).observe(place);
}

/** Writes every curve's gain at one frequency under the plot. */
function read(place: HTMLElement, data: Curves, index: number | null): void {
  const line = place.parentElement?.querySelector<HTMLElement>('.readout');
  const hz = index === null ? undefined : data.frequencyHz[index];
  if (!line || index === null || hz === undefined) {
    return;
  }
  const at = hz >= 1000 ? `${(hz / 1000).toFixed(2)} kHz` : `${hz.toFixed(0)} Hz`;
  line.textContent = `${at}: ` + data.curves.map(curve => `${curve.name} ${decibels(curve.gainDb[index] ?? null)}`).join('; ');
}

/** The same by keyboard: a slider over the drawn frequencies. */
function readBySlider(place: HTMLElement, data: Curves, plot: uPlot): void {
  const line = place.parentElement?.querySelector<HTMLElement>('.readout');
  if (!line) {
    return;
  }
  const range = document.createElement('input');
  range.type = 'range';
  range.max = String(data.frequencyHz.length - 1);
  range.value = String(
    Math.max(
      0,
      data.frequencyHz.findIndex(hz => hz >= (data.peakHz ?? 1000)),
    ),
  );
  range.setAttribute('aria-label', 'Read the curves at');
  range.addEventListener('input', event => {
    event.stopPropagation();
    const index = Number(range.value);
    plot.setCursor({ left: plot.valToPos(data.frequencyHz[index] ?? 1000, 'x'), top: 10 });
    read(place, data, index);
  });
  line.before(range);
  read(place, data, Number(range.value));
}

function decibels(gain: number | null): string {
  return gain === null ? '–' : `${gain < 0 ? '−' : '+'}${Math.abs(gain).toFixed(1)} dB`;
}

function hertz(tick: number | null): string {
  if (tick === null || !/^[125]/.test(String(tick))) {
    return '';
  }
  return tick >= 1000 ? `${tick / 1000}k` : String(tick);
}

function markPeak(plot: uPlot, peakHz: number | null, ink: string): void {
  if (peakHz === null) {
    return;
  }
  const x = plot.valToPos(peakHz, 'x', true);
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.strokeStyle = ink;
  ctx.setLineDash([2, 3]);
  ctx.beginPath();
  ctx.moveTo(x, bbox.top);
  ctx.lineTo(x, bbox.top + bbox.height);
  ctx.stroke();
  ctx.restore();
}
