import { clockQuestion, waitsForClock } from './asked';
import { keysUnder, read, remove, write } from './store';

export interface Problem {
  field: string;
  message: string;
  understood?: string | null;
  allowed?: string | null;

  /** What the entry can mean, when only the person can say which. */
  readings?: string[];
}

/** Anything a person enters, with the id that makes sending it twice harmless. */
export interface Sendable {
  id: string;
}

export interface Queued<E> {
  order: number;

  /** What it belongs to, for pages that know no more than this. */
  about?: string;

  /** When the person made it, by this device's clock. */
  saidUtc?: string;
  entry: E;
}

export interface Listener<E, O> {
  /** @param where on the tablet, and what it waits for */
  waiting(entry: E, where: string): void;
  sending(entry: E): void;
  answered(entry: E, outcome: O): void;

  /**
   * Before it takes what waits the server asks whether its clock is right.
   * @param question empty once nothing is asked any more
   * @param isRight sends what waits with the answer that it is
   */
  asked(question: string, isRight: () => void): void;

  /** Another page of this device has sent it. */
  elsewhere?(entry: E): void;
}

/** What is kept under a prefix, in order of entry. */
export function queuedUnder<E>(prefix: string): Queued<E>[] {
  return keysUnder(prefix)
    .map(key => read(key))
    .filter((text): text is string => text !== null)
    .map(text => JSON.parse(text) as Queued<E>)
    .sort((a, b) => a.order - b.order);
}

const retryMs = 1000;
const askAgainMs = 10_000;
const onTablet = 'on this tablet';
const patienceMs = 8000;

/** Entries that the server has not confirmed yet, in order of entry; they outlive the page and the server. */
export class Outbox<E extends Sendable, O> {
  private busy = false;
  private timer: number | undefined;

  /** What the server asks about its clock; nothing is sent aloud until it is answered. */
  private question = '';
  private clockIsRight = false;

  /** What the browser refuses to keep (a private window): it lives as long as the page. */
  private readonly unkept = new Map<string, Queued<E>>();

  /**
   * @param prefix where its entries are kept, for example "outbox/<batch>/"
   * @param address where they are sent
   * @param listener is told how each fares
   */
  constructor(
    private readonly prefix: string,
    private readonly address: string,
    private readonly listener: Listener<E, O>,
  ) {
    window.addEventListener('storage', event => {
      if (event.key?.startsWith(this.prefix) && event.newValue === null && event.oldValue !== null) {
        this.listener.elsewhere?.((JSON.parse(event.oldValue) as Queued<E>).entry);
      }
    });
  }

  /** Adds an entry and begins to send. */
  add(entry: E, about = ''): void {
    const queued: Queued<E> = { order: this.nextOrder(), saidUtc: new Date().toISOString(), about, entry };
    if (!write(this.prefix + entry.id, JSON.stringify(queued))) {
      this.unkept.set(entry.id, queued);
    }
    this.listener.waiting(entry, this.question === '' ? onTablet : waitsForClock);
    void this.flush();
  }

  /** Shows what still waits, after a reload. */
  resume(): void {
    for (const queued of this.queue()) {
      this.listener.waiting(queued.entry, onTablet);
    }
    void this.flush();
  }

  /** How many wait. */
  waitingCount(): number {
    return this.queue().length;
  }

  /** Sends the queue in order; stops at the first entry without an answer and tries again later. */
  async flush(): Promise<void> {
    if (this.busy) {
      return;
    }
    this.busy = true;
    window.clearTimeout(this.timer);
    try {
      for (let first = this.queue()[0]; first; first = this.queue()[0]) {
        if (this.question === '') {
          this.listener.sending(first.entry);
        }
        const outcome = await this.send(first);
        this.ask(outcome === null ? '' : (clockQuestion(outcome) ?? ''));
        if (outcome === null || this.question !== '') {
          this.keepWaiting(first.entry);
          return;
        }
        remove(this.prefix + first.entry.id);
        this.unkept.delete(first.entry.id);
        this.listener.answered(first.entry, outcome);
      }
    } finally {
      this.busy = false;
    }
  }

  /** Tells the page once what the server asks, and once that it asks no more. */
  private ask(question: string): void {
    this.clockIsRight = false;
    const changes = (question === '') !== (this.question === '');
    this.question = question;
    if (changes) {
      this.queue().forEach(queued => this.listener.waiting(queued.entry, question === '' ? onTablet : waitsForClock));
      this.listener.asked(question, () => {
        this.clockIsRight = true;
        void this.flush();
      });
    }
  }

  private keepWaiting(first: E): void {
    const asks = this.question !== '';
    this.listener.waiting(first, asks ? waitsForClock : onTablet);
    this.timer = window.setTimeout(() => void this.flush(), asks ? askAgainMs : retryMs);
  }

  /** With the entry go its two times, when it was made and when it is sent, so that the server can tell how long it waited. */
  private async send(queued: Queued<E>): Promise<(O & { problems?: Problem[] }) | null> {
    const stop = new AbortController();
    const clock = window.setTimeout(() => stop.abort(), patienceMs);
    try {
      const answer = await fetch(this.address + (this.clockIsRight ? '?clock-is-right=yes' : ''), {
        method: 'POST',
        headers: {
          'Content-Type': 'application/json',
          ...(queued.saidUtc ? { 'Coilwright-Told': `${queued.saidUtc}/${new Date().toISOString()}` } : {}),
        },
        body: JSON.stringify(queued.entry),
        signal: stop.signal,
      });
      const isOutcome = answer.ok || answer.status === 422 || answer.status === 409;
      return isOutcome ? ((await answer.json()) as O & { problems?: Problem[] }) : null;
    } catch {
      return null;
    } finally {
      window.clearTimeout(clock);
    }
  }

  private queue(): Queued<E>[] {
    return queuedUnder<E>(this.prefix)
      .concat(Array.from(this.unkept.values()))
      .sort((a, b) => a.order - b.order);
  }

  private nextOrder(): number {
    return this.queue().reduce((most, queued) => Math.max(most, queued.order), 0) + 1;
  }
}
