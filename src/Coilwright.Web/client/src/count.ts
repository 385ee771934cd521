import { sound } from './sound';

/** Where the counter of the batch's winder stands. */
interface ShownCount {
  number: number;
  counter: number;
  turns: number;
  toStop: number | null;
  rpm: number;
  note: '' | 'soon' | 'stop' | 'back' | 'ahead' | 'ended' | 'lost';

  /** How long ago it was passed on, s. */
  ageS: number;
}

/** An older count says nothing of the coil that is wound now: it is shown with its age, and filled in nowhere. */
const oldS = 60;

/** A page that is not answered asks again after so long. */
const againMs = 2000;

/** A winder whose counter nobody passes on is asked about so seldom. */
const idleMs = 5000;

const pause = (ms: number): Promise<void> => new Promise(resolve => setTimeout(resolve, ms));

const words: Record<ShownCount['note'], string> = {
  '': '',
  soon: 'slow down: the stop is near',
  stop: 'stop',
  back: 'the counter jumped back: look at it first',
  ahead: 'the counter jumped ahead: look at it first',
  ended: 'the turns ended before the stop: is the wire broken?',
  lost: 'the link to the counter is lost: read it yourself',
};

/** The winder's own counter on the winder's page: shown live, and in the field for the counter while nobody types there. */
export async function liveCount(place: HTMLElement): Promise<void> {
  const batch = encodeURIComponent(place.dataset.liveCount ?? '');
  let seen = 0;
  let filled = '';
  for (;;) {
    try {
      const answer = await fetch(`/api/counts/${batch}?after=${seen}`, { cache: 'no-store' });
      if (!answer.ok) {
        return;
      }
      const shown = (await answer.json()) as ShownCount;
      if (shown.number === 0) {
        await pause(idleMs);
        continue;
      }
      const isNew = shown.number !== seen;
      seen = shown.number;
      show(place, shown, isNew && shown.ageS < oldS);
      const field = document.getElementById('counter');
      if (isNew && shown.ageS < oldS && field instanceof HTMLInputElement && (field.value === '' || field.value === filled)) {
        filled = String(shown.counter);
        field.value = filled;
        field.dispatchEvent(new Event('input', { bubbles: true }));
      }
    } catch {
      await pause(againMs);
    }
  }
}

function show(place: HTMLElement, shown: ShownCount, isLive: boolean): void {
  const grouped = (number: number): string => Math.round(number).toLocaleString('en-GB').replace(/,/g, '\u202F');
  place.hidden = false;
  place.dataset.note = shown.note;
  const left = leftOf(shown.toStop, grouped);
  const speed = shown.rpm > 0 ? `, ${grouped(shown.rpm)} rpm` : '';
  const note = words[shown.note] === '' ? '' : ' – ' + words[shown.note];
  const age = shown.ageS < oldS ? '' : `, ${Math.floor(shown.ageS / 60)} min ago`;
  place.textContent = `${grouped(shown.turns)} turns${left}${shown.ageS < oldS ? speed : ''}${age}${note}`;
  if (isLive && shown.note !== '') {
    sound(shown.note === 'soon' ? 'pass' : shown.note === 'stop' ? 'hold' : 'reject');
  }
}

/** Turns to come, or past the stop; nothing without a stop. */
function leftOf(toStop: number | null, grouped: (number: number) => string): string {
  if (toStop === null) {
    return '';
  }
  return toStop >= 0 ? `, ${grouped(toStop)} to go` : `, ${grouped(-toStop)} past the stop`;
}
