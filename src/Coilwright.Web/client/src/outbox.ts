import { keysUnder, read, remove, write } from './store';

/** One coil as typed, with the id that makes sending it twice harmless. */
export interface CoilEntry {
  id: string;
  batchId: string;
  tag: string;
  resistance: string;
  temperature: string;
  inductance: string;
  inductanceAt: string;
  turns: string;
  instrument: string;
  person: string;
}

export interface Problem {
  field: string;
  message: string;
  understood?: string | null;
  allowed?: string | null;
}

/** What the server made of an entry. */
export interface Outcome {
  problems: Problem[];
  echo: string;
  duplicate: boolean;
  nextTag: string | null;
  verdict: { kind: 'pass' | 'hold' | 'reject'; reasons: string[] } | null;
}

interface Queued {
  order: number;
  entry: CoilEntry;
}

export interface Listener {
  waiting(entry: CoilEntry): void;
  sending(entry: CoilEntry): void;
  answered(entry: CoilEntry, outcome: Outcome): void;
}

const retryMs = 1000;
const patienceMs = 8000;

/** Entries that the server has not confirmed yet, in order of entry; they outlive the page and the server. */
export class Outbox {
  private busy = false;
  private timer: number | undefined;

  constructor(private readonly batchId: string, private readonly listener: Listener) {}

  /** Adds an entry and begins to send. */
  add(entry: CoilEntry): void {
    const queued: Queued = { order: this.nextOrder(), entry };
    write(this.prefix() + entry.id, JSON.stringify(queued));
    this.listener.waiting(entry);
    void this.flush();
  }

  /** Shows what still waits, after a reload. */
  resume(): void {
    for (const queued of this.queue()) {
      this.listener.waiting(queued.entry);
    }
    void this.flush();
  }

  /** Tags that wait, so that the next proposal skips them. */
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
        this.listener.sending(first.entry);
        const outcome = await this.send(first.entry);
        if (outcome === null) {
          this.listener.waiting(first.entry);
          this.timer = window.setTimeout(() => void this.flush(), retryMs);
          return;
        }
        remove(this.prefix() + first.entry.id);
        this.listener.answered(first.entry, outcome);
      }
    } finally {
      this.busy = false;
    }
  }

  private async send(entry: CoilEntry): Promise<Outcome | null> {
    const stop = new AbortController();
    const clock = window.setTimeout(() => stop.abort(), patienceMs);
    try {
      const answer = await fetch(`/api/batches/${this.batchId}/coils`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify(entry),
        signal: stop.signal,
      });
      const isOutcome = answer.ok || answer.status === 422;
      return isOutcome ? (await answer.json()) as Outcome : null;
    } catch {
      return null;
    } finally {
      window.clearTimeout(clock);
    }
  }

  private queue(): Queued[] {
    return keysUnder(this.prefix())
      .map(key => read(key))
      .filter((text): text is string => text !== null)
      .map(text => JSON.parse(text) as Queued)
      .sort((a, b) => a.order - b.order);
  }

  private nextOrder(): number {
    return this.queue().reduce((most, queued) => Math.max(most, queued.order), 0) + 1;
  }

  private prefix(): string {
    return `outbox/${this.batchId}/`;
  }
}
