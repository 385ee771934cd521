import { loudest, sound, soundNote, type VerdictWord } from './sound';
import { clockTime } from './store';

const tickMs = 1000,
  askAgainMs = 5 * 60 * 1000;

/**
 * The page of clocks runs by itself: what stands there turns at its time, by the shop's clock and not by this device's. The server
 * says beforehand into what.
 */
export function clocks(root: HTMLElement): void {
  const page = new Clocks(root);
  page.begin();
}

class Clocks {
  /** The shop's clock less this device's. */
  private aheadMs: number;
  private readonly shown: HTMLElement | null;

  constructor(private readonly root: HTMLElement) {
    this.aheadMs = Date.parse(root.dataset.now ?? '') - Date.now();
    this.shown = document.querySelector('[data-clock]');
  }

  begin(): void {
    const note = document.querySelector<HTMLElement>('[data-sound-note]');
    if (note) {
      soundNote(note);
    }
    window.setInterval(() => this.tick(), tickMs);
    window.setInterval(() => void this.ask(), askAgainMs);
    const woken = (): void => {
      if (document.visibilityState === 'visible') {
        this.tick(); // at once, also where the server is away
        void this.ask();
      }
    };
    document.addEventListener('visibilitychange', woken);
    window.addEventListener('pageshow', woken);
    this.tick();
  }

  /** A device's clock may have been set, or have stood, while it slept. */
  private async ask(): Promise<void> {
    try {
      const sentMs = Date.now();
      const answer = await fetch('/api/now');
      const told = (await answer.json()) as { nowUtc: string };
      this.aheadMs = Date.parse(told.nowUtc) - (sentMs + Date.now()) / 2;
      this.tick();
    } catch {
      // Without the server the last offset still holds.
    }
  }

  private tick(): void {
    const nowMs = Date.now() + this.aheadMs;
    const tones: VerdictWord[] = [];
    for (const part of document.querySelectorAll<HTMLElement>('[data-turning]')) {
      const tone = this.turn(part, nowMs);
      if (tone !== null) {
        tones.push(tone);
      }
    }
    for (const left of document.querySelectorAll<HTMLElement>('[data-until]')) {
      const words = awayInWords(Date.parse(left.dataset.until ?? '') - nowMs);
      if (left.textContent !== words) {
        left.textContent = words;
      }
    }
    for (const left of document.querySelectorAll<HTMLElement>('[data-left]')) {
      const words = leftInWords(Date.parse(left.dataset.left ?? '') - nowMs);
      if (left.textContent !== words) {
        left.textContent = words;
      }
    }
    this.showTime(nowMs);
    const tone = loudest(tones);
    if (tone !== null) {
      sound(tone);
    }
  }

  /**
   * Puts what the server wrote for this time in the place of what stands there. Gives the tone of it; null when nothing turned or
   * nothing sounds.
   */
  private turn(part: HTMLElement, nowMs: number): VerdictWord | null {
    const due = Array.from(part.querySelectorAll<HTMLTemplateElement>(':scope > template[data-at]')).filter(
      turn => Date.parse(turn.dataset.at ?? '') <= nowMs,
    );
    const last = due[due.length - 1];
    if (!last) {
      return null;
    }
    const later = Array.from(part.querySelectorAll<HTMLTemplateElement>(':scope > template[data-at]')).filter(turn => !due.includes(turn));
    part.replaceChildren(last.content.cloneNode(true), ...later);
    const alert = last.dataset.alert ?? '';
    if (alert === '') {
      return null;
    }
    this.say(alert, Date.parse(last.dataset.at ?? ''));
    return (last.dataset.tone ?? 'hold') as VerdictWord;
  }

  private say(alert: string, atMs: number): void {
    const item = document.createElement('li');
    item.textContent = `${this.timeOf(atMs)} ${alert}`;
    this.root.prepend(item);
  }

  private showTime(nowMs: number): void {
    const words = this.timeOf(nowMs);
    if (this.shown && this.shown.textContent !== words) {
      this.shown.textContent = words;
    }
  }

  private timeOf(atMs: number): string {
    try {
      return new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone: this.root.dataset.zone }).format(atMs);
    } catch {
      return clockTime(new Date(atMs));
    }
  }
}

/** "in 12 min", "in 1 min 20 s", "3 h 5 min ago". */
export function awayInWords(awayMs: number): string {
  return awayMs >= 0 ? `in ${leftInWords(awayMs)}` : leftInWords(awayMs);
}

/** "12 min", "1 min 20 s", "3 h 5 min ago": the words that the server writes for the same time. */
export function leftInWords(awayMs: number): string {
  const s = awayMs >= 0 ? Math.ceil(awayMs / 1000) : Math.floor(-awayMs / 1000),
    min = Math.floor(s / 60),
    h = Math.floor(min / 60),
    words = lengthInWords(s, min, h);
  return awayMs >= 0 ? words : `${words} ago`;
}

function lengthInWords(s: number, min: number, h: number): string {
  if (s < 120) {
    return s < 60 ? `${s} s` : `1 min ${s - 60} s`;
  }
  if (min < 120) {
    return `${min} min`;
  }
  return h < 48 ? `${h} h ${min % 60} min` : `${Math.floor(h / 24)} days`;
}
