import uPlot from 'uplot';

/** What the server writes beside the table of a response: frequencies, and one gain curve per load. */
interface Curves {
  frequencyHz: number[];
  curves: { name: string; gainDb: number[]; dashed: boolean }[];
  peakHz: number | null;
}

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
  const plot = new uPlot({
    width: Math.max(260, place.clientWidth),
    height: 260,
    legend: { show: false },
    cursor: { y: false },
    scales: { x: { time: false, distr: 3, log: 10, range: (_, low, high) => [low, high] }, y: { range: (_, low, high) => [Math.max(-30, Math.floor(low / 6) * 6), Math.ceil((high + 2) / 6) * 6] } },
    axes: [
      { ...axis, label: 'frequency, Hz', labelFont: '14px system-ui', values: (_, ticks) => ticks.map(hertz) },
      { ...axis, label: 'gain, dB', labelFont: '14px system-ui', size: 48 },
    ],
    series: [
      {},
      ...data.curves.map((curve, index): uPlot.Series => ({
        label: curve.name,
        stroke: colours[index % colours.length] ?? ink,
        width: 2,
        points: { show: false },
        ...(curve.dashed ? { dash: [6, 4] } : {}),
      })),
    ],
    hooks: { draw: [self => markPeak(self, data.peakHz, ink)] },
  }, [data.frequencyHz, ...data.curves.map(curve => curve.gainDb)], place);
  new ResizeObserver(() => plot.setSize({ width: Math.max(260, place.clientWidth), height: 260 })).observe(place);
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
