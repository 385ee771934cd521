/** What the server writes beside the figure of a response: frequencies, gains, and where in the drawing the plot lies. */
interface Curves {
  frequencyHz: number[];
  curves: { name: string; gainDb: (number | null)[] }[];
  peakHz: number | null;
  from: number;
  to: number;
}

const lowestHz = 20;
const decades = 3;

/** A line that follows the pointer over a response and reads every curve; the same by keyboard with a slider under it. */
export function responseCursor(place: HTMLElement): void {
  const data = JSON.parse(place.dataset.cursor ?? '{}') as Curves;
  const readout = place.parentElement?.querySelector<HTMLElement>('[data-readout]');
  if (!readout || data.frequencyHz.length === 0 || place.querySelector('.cursor')) {
    return;
  }
  const line = document.createElement('div');
  line.className = 'cursor';
  line.hidden = true;
  const range = slider(data);
  const read = (index: number): void => {
    const hz = data.frequencyHz[index] ?? lowestHz;
    const part = data.from + (data.to - data.from) * (Math.log10(hz / lowestHz) / decades);
    line.style.left = `${100 * part}%`;
    range.value = String(index);
    readout.textContent = `${hertz(hz)}: ` + data.curves.map(curve => `${curve.name} ${decibels(curve.gainDb[index] ?? null)}`).join('; ');
  };
  place.append(line);
  readout.before(range);
  place.addEventListener('pointermove', event => {
    const box = place.getBoundingClientRect();
    const part = ((event.clientX - box.left) / box.width - data.from) / (data.to - data.from);
    line.hidden = false;
    read(Math.round(Math.min(1, Math.max(0, part)) * (data.frequencyHz.length - 1)));
  });
  range.addEventListener('input', event => {
    event.stopPropagation(); // it is no field of the recipe
    line.hidden = false;
    read(Number(range.value));
  });
  read(Number(range.value));
}

function slider(data: Curves): HTMLInputElement {
  const range = document.createElement('input');
  range.type = 'range';
  range.max = String(data.frequencyHz.length - 1);
  range.value = String(Math.max(0, data.frequencyHz.findIndex(hz => hz >= (data.peakHz ?? 1000))));
  range.setAttribute('aria-label', 'Read the curves at');
  return range;
}

function hertz(hz: number): string {
  return hz >= 1000 ? `${(hz / 1000).toFixed(2)} kHz` : `${hz.toFixed(0)} Hz`;
}

function decibels(gain: number | null): string {
  return gain === null ? '–' : `${gain < 0 ? '−' : '+'}${Math.abs(gain).toFixed(1)} dB`;
}
