import { showQuestion } from './asked';
import { forgetDraft, say } from './drafts';
import { newId } from './ids';
import { Outbox, type Listener, type Problem } from './outbox';
import { clearProblems, sentRow, showProblems } from './sent';
import { clockTime } from './store';
import { forgetUnderstanding } from './understood';

/** At the winder: a letter after the counter's figures says what happened, so that a break is logged without a mouse. */
export function happeningKeys(form: HTMLFormElement): void {
  document.addEventListener('keydown', event => {
    const target = event.target;
    const typing = target instanceof HTMLInputElement && target.name !== 'counter';
    if (event.ctrlKey || event.altKey || event.metaKey || typing || target instanceof HTMLTextAreaElement) {
      return;
    }
    const button = form.querySelector<HTMLButtonElement>(`button[data-key="${CSS.escape(event.key.toLowerCase())}"]`);
    if (!button) {
      return;
    }
    event.preventDefault();
    const counter = form.querySelector<HTMLInputElement>('input[name=counter]');
    if (counter && counter.value.trim() === '' && button.value !== 'Resumed') {
      counter.focus();
      return;
    }
    button.click();
  });
}

/** One event at a winder as told. */
interface Happening {
  id: string;
  kind: string;
  tag: string;
  counter: string;
  spool: string;
  choice: string;
  turns: string;
  machine: string;
  person: string;
  note: string;
}

interface Told {
  problems: Problem[];

  /** After a refusal: what may be told now by the batch's own state. */
  may?: { tag: string | null; shown: string[] } | null;
}

/** What may happen next, as far as a tablet without the server can know. */
const following: Record<string, string[]> = {
  Begun: ['counter', 'Paused', 'Broken'],
  Paused: ['counter', 'Broken', 'Resumed'],
  Resumed: ['counter', 'Paused', 'Broken'],
  Broken: ['Spliced', 'FinishedLow', 'Scrapped'],
  Spliced: ['counter', 'Paused', 'Broken'],
  FinishedLow: [],
  Scrapped: ['Begun'],
};

const quietMs = 400;

/**
 * The machine view: what happened goes into an outbox that outlives the network, the server and the page; the page is drawn anew once
 * all of it is saved.
 */
export function happenings(list: HTMLElement): void {
  const batchId = list.dataset.happenings ?? '';
  const page = new WinderPage(list, batchId);
  for (const form of document.querySelectorAll<HTMLFormElement>('form[action*="/wind"][method=post]')) {
    form.addEventListener('submit', event => {
      event.preventDefault();
      page.submit(form, (event as SubmitEvent).submitter);
    });
  }
  page.begin();
}

class WinderPage implements Listener<Happening, Told> {
  private readonly outbox: Outbox<Happening, Told>;
  private readonly main: HTMLFormElement | null = document.querySelector('form[data-happening]');
  private last = { kind: '', atMs: -quietMs };
  private refused = false;
  private readonly seen = new Set<string>();

  constructor(
    private readonly list: HTMLElement,
    batchId: string,
  ) {
    this.outbox = new Outbox(`happened/${batchId}/`, `/api/batches/${batchId}/events`, this);
  }

  begin(): void {
    window.addEventListener('online', () => void this.outbox.flush());
    document.addEventListener('visibilitychange', () => void this.outbox.flush());
    this.outbox.resume();
  }

  submit(form: HTMLFormElement, sender: HTMLElement | null): void {
    const told = new FormData(form);
    const value = (name: string): string => String(told.get(name) ?? '');
    const kind =
      sender instanceof HTMLButtonElement && sender.name === 'kind'
        ? sender.value
        : form.action.endsWith('/undo')
          ? 'Undone'
          : value('kind');
    const now = performance.now();
    const counter = value('counter');
    if (kind === this.last.kind && now - this.last.atMs < quietMs) {
      return; // a double press is one event
    }
    this.last = { kind, atMs: now };
    const stops = kind === 'Paused' || kind === 'Broken';
    const one: Happening = {
      id: newId(),
      kind,
      tag: kind === 'Begun' ? '' : value('tag'),
      counter: stops ? counter : '',
      spool: value('spool'),
      choice: value('choice'),
      turns: value('turns'),
      machine: value('machine'),
      person: value('person'),
      note: value('note'),
    };
    clearProblems();
    this.refused = false;
    if (stops) {
      this.clearCounter();
    }
    this.outbox.add(one);
  }

  asked(question: string, isRight: () => void): void {
    showQuestion(this.list, question, isRight);
  }

  waiting(one: Happening, where: string): void {
    this.row(one, where);
    if (!this.seen.has(one.id)) {
      this.seen.add(one.id); // a new try of an old event changes no button
      this.offer(one.kind);
    }
  }

  sending(one: Happening): void {
    this.row(one, 'sending');
  }

  answered(one: Happening, told: Told): void {
    if (told.problems.length > 0) {
      this.refused = true;
      this.last = { kind: '', atMs: -quietMs }; // what is pressed after a refusal is a new try, however soon
      this.row(one, 'not saved');
      this.restore(told);
      this.giveBack(one);
      showProblems(this.list, told.problems);
      return;
    }
    this.row(one, `saved ${clockTime(new Date())}`);
    const onTheMove = document.activeElement instanceof HTMLInputElement && document.activeElement.value !== '';
    if (this.outbox.waitingCount() === 0 && !this.refused && !onTheMove) {
      window.location.assign(`${window.location.pathname}?machine=${encodeURIComponent(one.machine)}`);
    }
  }

  /** Shows the buttons that fit what was told last; the server's own page takes over once it answers. */
  private offer(kind: string): void {
    const next = following[kind];
    if (!this.main || !next) {
      return;
    }
    this.show(next);
    if (kind === 'Scrapped' || kind === 'Begun') {
      const tag = this.main.querySelector<HTMLInputElement>('input[name=tag]');
      if (tag) {
        tag.value = ''; // the coil on the spindle is another one now; the server knows which
      }
    }
    if (next.includes('counter')) {
      this.main.querySelector<HTMLInputElement>('input[name=counter]')?.focus();
    }
  }

  /** What was refused has not happened: the buttons follow the server, unless a later event still waits. */
  private restore(told: Told): void {
    const tag = this.main?.querySelector<HTMLInputElement>('input[name=tag]');
    if (!told.may || this.outbox.waitingCount() > 0) {
      return;
    }
    this.show(told.may.shown);
    if (tag) {
      tag.value = told.may.tag ?? '';
    }
  }

  /** After a break the page itself may offer what can be done, with its consequences: then no second button for it. */
  private show(next: string[]): void {
    for (const part of this.main?.querySelectorAll<HTMLElement>('[data-when]') ?? []) {
      const when = part.dataset.when ?? '';
      const stands = document.querySelector(`form:not([data-happening]) input[name=kind][value="${CSS.escape(when)}"]`) !== null;
      part.hidden = !next.includes(when) || stands;
    }
  }

  private giveBack(one: Happening): void {
    const counter = this.main?.querySelector<HTMLInputElement>('input[name=counter]');
    if (counter && counter.value === '' && one.counter !== '') {
      counter.value = one.counter;
      counter.dispatchEvent(new Event('input', { bubbles: true }));
      counter.focus();
      counter.select();
    }
  }

  private clearCounter(): void {
    const counter = this.main?.querySelector<HTMLInputElement>('input[name=counter]');
    if (counter) {
      counter.value = '';
      forgetUnderstanding(counter);
      forgetDraft(this.main?.dataset.drafts ?? '', 'counter');
      say(counter, '');
    }
  }

  private row(one: Happening, where: string): void {
    sentRow(
      this.list,
      `happened-${one.id}`,
      `${one.tag} ${names[one.kind] ?? one.kind}${one.counter === '' ? '' : ` at ${one.counter}`}`.trim(),
      where,
    );
  }
}

const names: Record<string, string> = {
  Begun: 'begun',
  Paused: 'paused',
  Resumed: 'resumed',
  Broken: 'broke',
  Spliced: 'spliced',
  FinishedLow: 'ended low',
  Scrapped: 'scrapped',
  SpoolTaken: 'another spool',
  Released: 'series released',
  SignalAnswered: 'signal looked into',
  Undone: 'undo',
};
