import { newId } from './ids';
import { read, write } from './store';

/** What an instrument shows just now. */
interface ShownValue {
  number: number;
  kind: 'live' | 'standing' | 'off' | 'trouble';
  words: string;
  typed: string;
  id: string | null;
  raw: string;
}

/** Takes a reading: puts it into the field and, hands free, saves the coil under the reading's own id. False when it was not taken. */
export type Take = (typed: string, instrument: string, saveAs: string | null) => boolean;

/** The last reading that this tablet has saved: a coil that is still clipped on after a reload is not saved again. */
const lastKey = 'meter/saved';

/** A page that is not answered asks again after so long. */
const againMs = 1000;

/** The meter's row on the entry page. */
export function meterRow(row: HTMLElement, take: Take): void {
  new MeterRow(row, take).ready();
}

class MeterRow {
  private free = false;

  /** A single reading is wanted. */
  private wanted = false;
  private asking = false;
  private seen = 0;

  constructor(
    private readonly row: HTMLElement,
    private readonly take: Take,
  ) {}

  ready(): void {
    this.button('read').addEventListener('click', () => {
      this.wanted = true;
      this.seen = 0;
      void this.ask();
    });
    this.button('free').addEventListener('click', () => {
      this.free = !this.free;
      this.seen = 0;
      this.show();
      void this.ask();
    });
    this.button('open').addEventListener('click', () => this.take('open', this.name(), newId()));
    this.show();
  }

  /** Asks for as long as something is wanted; one question at a time. */
  private async ask(): Promise<void> {
    if (this.asking) {
      return;
    }
    this.asking = true;
    while (this.free || this.wanted) {
      const shown = await this.next();
      if (shown === null) {
        await new Promise(resolve => setTimeout(resolve, againMs));
        continue;
      }
      this.seen = shown.number;
      this.say(shown.words, shown.kind);
      this.use(shown);
    }
    this.asking = false;
    this.say('', 'off');
  }

  private use(shown: ShownValue): void {
    if (shown.kind !== 'standing' || shown.id === null || !(this.free || this.wanted)) {
      return;
    }
    if (this.free && read(lastKey) !== shown.id) {
      if (this.take(shown.typed, this.name(), shown.id)) {
        write(lastKey, shown.id);
      } else {
        this.say(`${shown.words}: not taken, something is typed already`, 'trouble');
      }
    } else if (this.wanted) {
      this.take(shown.typed, this.name(), null);
    }
    this.wanted = false;
  }

  private async next(): Promise<ShownValue | null> {
    try {
      const answer = await fetch(`/api/meters/${encodeURIComponent(this.name())}?after=${this.seen}`, { cache: 'no-store' });
      if (answer.ok) {
        return (await answer.json()) as ShownValue;
      }
      this.say('this meter is not in the shop any more', 'trouble');
      this.wanted = false;
      return null;
    } catch {
      this.say('no answer from the server: type the coil, it is kept here', 'trouble');
      this.wanted = false;
      return null;
    }
  }

  private show(): void {
    const free = this.button('free');
    free.setAttribute('aria-pressed', String(this.free));
    free.textContent = this.free ? 'Stop hands free' : 'Hands free';
    this.button('open').hidden = !this.free;
  }

  private say(words: string, kind: string): void {
    const place = this.row.querySelector<HTMLElement>('[data-meter-shows]');
    if (place) {
      place.textContent = words;
      place.dataset.kind = kind;
    }
  }

  private name(): string {
    return (document.getElementById('meter') as HTMLInputElement | HTMLSelectElement | null)?.value ?? '';
  }

  private button(what: string): HTMLButtonElement {
    return this.row.querySelector<HTMLButtonElement>(`button[data-meter-${what}]`)!;
  }
}
