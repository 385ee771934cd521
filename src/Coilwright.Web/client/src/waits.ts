import { showQuestion } from './asked';
import type { CoilEntry, Outcome } from './entry';
import { Outbox, queuedUnder, type Listener, type Problem, type Queued } from './outbox';
import { sentences } from './sent';
import { clockTime, keysUnder, read, remove, write } from './store';

type Coils = Outbox<CoilEntry, Outcome>;

/** A coil that the server did not take, with what it said. */
export interface Refused {
  entry: CoilEntry;
  about: string;
  problems: Problem[];
}

const outbox = 'outbox/',
  refused = 'refused/';
const mendable = ['tag', 'resistance', 'temperature', 'inductance', 'inductanceAt', 'turns', 'person'] as const;

/** Keeps what was refused until a person mends or discards it. */
export function keepRefused(one: Refused): void {
  write(`${refused}${one.entry.batchId}/${one.entry.id}`, JSON.stringify(one));
}

/** Puts a refused coil into the drafts of its entry page, unless another coil is being typed there. Runs before drafts are shown. */
export function mendRefused(): void {
  const id = new URLSearchParams(window.location.search).get('refused');
  const form = document.querySelector<HTMLFormElement>('form[data-entry]');
  const key = `${refused}${form?.dataset.batch ?? ''}/${id ?? ''}`;
  const text = id === null || form === null ? null : read(key);
  const draft = `draft/${form?.dataset.drafts ?? ''}/`;
  if (text === null || (read(`${draft}resistance`) ?? '') !== '') {
    return;
  }
  const one = JSON.parse(text) as Refused;
  for (const name of mendable) {
    if (one.entry[name] !== '') {
      write(draft + name, one.entry[name]);
    }
  }
  remove(key);
}

/**
 * Coils that wait on this device are sent from every page; where a page has room for it, what waits and what was refused stands there.
 * An entry page sends those of its own batch itself.
 */
export function waitingCoils(ownBox: Coils | null): void {
  const own = document.querySelector<HTMLFormElement>('form[data-entry]')?.dataset.batch ?? '';
  const panel = document.querySelector<HTMLElement>('[data-waits]');
  const page = new WaitingCoils(panel, own, ownBox);
  page.begin();
}

class WaitingCoils implements Listener<CoilEntry, Outcome> {
  private readonly boxes = new Map<string, Coils>();
  private readonly places = new Map<string, string>();
  private readonly abouts = new Map<string, string>();
  private readonly gone = new Map<string, CoilEntry>();

  constructor(
    private readonly panel: HTMLElement | null,
    private readonly own: string,
    private readonly ownBox: Coils | null,
  ) {}

  begin(): void {
    for (const batch of new Set(
      keysUnder(outbox)
        .map(key => key.split('/')[1] ?? '')
        .filter(batch => batch !== 'pieces' && batch !== this.own),
    )) {
      this.boxOf(batch).resume();
    }
    const again = (): void => this.boxes.forEach(box => void box.flush());
    window.addEventListener('online', again);
    document.addEventListener('visibilitychange', again);
    window.addEventListener('storage', () => this.show());
    this.show();
  }

  private boxOf(batch: string): Coils {
    if (batch === this.own && this.ownBox) {
      return this.ownBox;
    }
    const box = this.boxes.get(batch) ?? new Outbox<CoilEntry, Outcome>(`${outbox}${batch}/`, `/api/batches/${batch}/coils`, this);
    this.boxes.set(batch, box);
    return box;
  }

  /** The boxes of several batches are asked the same; one answer is for all. */
  asked(question: string, isRight: () => void): void {
    if (this.panel !== null && (question === '' || this.queued().length > 0)) {
      showQuestion(this.panel, question, isRight);
    }
  }

  waiting(entry: CoilEntry, where: string): void {
    this.place(entry, where);
  }

  sending(entry: CoilEntry): void {
    this.place(entry, 'sending');
  }

  answered(entry: CoilEntry, outcome: Outcome): void {
    if (outcome.problems.length > 0 || outcome.verdict === null) {
      keepRefused({ entry, about: this.abouts.get(entry.id) ?? '', problems: outcome.problems });
      this.show();
      return;
    }
    this.gone.set(entry.id, entry);
    this.place(entry, `saved ${clockTime(new Date())}: ${outcome.verdict.kind}`);
    const typing = document.activeElement instanceof HTMLInputElement && document.activeElement.value !== '';
    const allSent = Array.from(this.boxes.values()).every(box => box.waitingCount() === 0);
    if (this.panel !== null && this.own === '' && allSent && this.refused().length === 0 && !typing) {
      window.location.reload(); // its counts were drawn before these coils came
    }
  }

  elsewhere(): void {
    this.show();
  }

  private place(entry: CoilEntry, where: string): void {
    this.places.set(entry.id, where);
    this.show();
  }

  private mine(batch: string): boolean {
    const wanted = this.panel?.dataset.waits ?? '';
    return wanted === '' || wanted === batch;
  }

  private queued(): Queued<CoilEntry>[] {
    const all = queuedUnder<CoilEntry>(outbox).filter(one => typeof one.entry.batchId === 'string');
    for (const one of all) {
      this.abouts.set(one.entry.id, one.about ?? '');
    }
    return all.filter(one => one.entry.batchId !== this.own && this.mine(one.entry.batchId));
  }

  private refused(): Refused[] {
    return keysUnder(refused)
      .map(key => read(key))
      .filter((text): text is string => text !== null)
      .map(text => JSON.parse(text) as Refused)
      .filter(one => this.mine(one.entry.batchId));
  }

  private show(): void {
    const waiting = this.queued(),
      not = this.refused();
    if (!this.panel) {
      return;
    }
    const gone = Array.from(this.gone.values()).filter(entry => this.mine(entry.batchId));
    this.panel.hidden = waiting.length + not.length + gone.length === 0;
    this.panel.replaceChildren();
    if (waiting.length > 0) {
      this.panel.append(made('h2', waiting.length === 1 ? '1 coil waits on this tablet' : `${waiting.length} coils wait on this tablet`));
    }
    if (waiting.length + gone.length > 0) {
      const list = made('ul', '');
      list.className = 'sent';
      list.append(...[...waiting.map(one => one.entry), ...gone].map(entry => this.line(entry)));
      this.panel.append(list);
    }
    if (not.length > 0) {
      this.panel.append(
        made('h2', not.length === 1 ? '1 coil of this tablet was not saved' : `${not.length} coils of this tablet were not saved`),
      );
      const list = made('ul', '');
      list.className = 'refused';
      list.append(...not.map(one => this.refusedLine(one)));
      this.panel.append(list);
    }
  }

  private line(entry: CoilEntry): HTMLElement {
    const item = made('li', '');
    const about = made('span', this.words(entry, this.abouts.get(entry.id) ?? ''));
    about.className = 'about';
    const where = made('span', this.places.get(entry.id) ?? 'on this tablet');
    where.className = 'where';
    item.append(about, where);
    return item;
  }

  private refusedLine(one: Refused): HTMLElement {
    const words = this.words(one.entry, one.about);
    const item = made('li', '');
    const mend = document.createElement('a');
    mend.className = 'button';
    mend.href = `/batches/${one.entry.batchId}/enter?refused=${one.entry.id}`;
    mend.textContent = `Mend ${nameOf(one.entry)}`;
    const discard = document.createElement('button');
    discard.type = 'button';
    discard.className = 'quiet';
    discard.textContent = `Discard ${nameOf(one.entry)}`;
    discard.addEventListener('click', () => {
      remove(`${refused}${one.entry.batchId}/${one.entry.id}`);
      this.show();
    });
    const ways = made('span', '');
    ways.className = 'row';
    ways.append(mend, discard);
    const choices = one.problems.map(problem => this.choice(one, problem));
    item.append(made('strong', words), made('p', one.problems.map(sentences).join(' ')), ...choices, ways);
    return item;
  }

  /** A button for each reading of what can mean two things: one touch decides and sends the coil again. */
  private choice(one: Refused, problem: Problem): HTMLElement {
    const ways = made('span', '');
    ways.className = 'row';
    const field = mendable.find(name => name === problem.field);
    for (const reading of field === undefined ? [] : (problem.readings ?? [])) {
      const button = document.createElement('button');
      button.type = 'button';
      button.textContent = `${nameOf(one.entry)}: ${reading}`;
      button.addEventListener('click', () => this.decide(one, { ...one.entry, [field ?? 'resistance']: reading }));
      ways.append(button);
    }
    return ways;
  }

  /** It keeps its id: nothing was stored under it. */
  private decide(one: Refused, entry: CoilEntry): void {
    this.boxOf(entry.batchId).add(entry, one.about);
    remove(`${refused}${entry.batchId}/${entry.id}`);
    this.show();
  }

  private words(entry: CoilEntry, about: string): string {
    return `${about === '' ? '' : `${about}, `}${nameOf(entry)}: ${entry.resistance}`;
  }
}

function nameOf(entry: CoilEntry): string {
  return entry.tag.trim() === '' ? 'coil without a tag' : entry.tag;
}

function made(name: string, text: string): HTMLElement {
  const element = document.createElement(name);
  element.textContent = text;
  return element;
}
