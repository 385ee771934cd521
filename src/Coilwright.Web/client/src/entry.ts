import { showQuestion } from './asked';
import { forgetDraft, say } from './drafts';
import { newId } from './ids';
import { meterRow } from './meter';
import { Outbox, type Listener, type Problem } from './outbox';
import { sentences } from './sent';
import { SpoolQuestions } from './question';
import { sound } from './sound';
import { clockTime } from './store';
import { forgetUnderstanding, undecided, whichOfTwo } from './understood';
import { keepRefused } from './waits';

/** One coil as typed. */
export interface CoilEntry {
  id: string;
  batchId: string;
  tag: string;

  /** Nobody typed or scanned the tag: it is a new coil's. */
  proposed: boolean;
  resistance: string;
  temperature: string;
  inductance: string;
  inductanceAt: string;
  turns: string;
  instrument: string;
  person: string;

  /** "same" or "new" coil, for a tag entered again while another spool is on; empty when nobody was asked. */
  coil: string;
}

/** What the server made of an entry. */
export interface Outcome {
  problems: Problem[];
  echo: string;
  duplicate: boolean;
  nextTag: string | null;

  /** How far the batch is: "24 of 24 done". */
  count: string;
  verdict: { kind: 'pass' | 'hold' | 'reject'; reasons: string[]; cause: string; check: string } | null;
  /** The warning that the run drifts; empty when it does not. */
  signal: string;
}

/** The coil entry page: Enter puts the coil in the outbox, proposes the next tag and keeps the focus where the next figure goes. */
export function coilEntry(form: HTMLFormElement): Outbox<CoilEntry, Outcome> {
  const batchId = form.dataset.batch ?? '';
  const page = new EntryPage(form, batchId);
  page.ready();
  const outbox = new Outbox<CoilEntry, Outcome>(`outbox/${batchId}/`, `/api/batches/${batchId}/coils`, page);
  form.addEventListener('submit', event => {
    const sender = (event as SubmitEvent).submitter;
    if (sender instanceof HTMLButtonElement && sender.formAction.endsWith('/undo')) {
      return;
    }
    event.preventDefault();
    page.submit(outbox);
  });
  const meter = form.querySelector<HTMLElement>('[data-meter]');
  if (meter) {
    meterRow(meter, (typed, instrument, saveAs) => page.takeReading(outbox, typed, instrument, saveAs));
  }
  window.addEventListener('online', () => void outbox.flush());
  document.addEventListener('visibilitychange', () => void outbox.flush());
  outbox.resume();
  return outbox;
}

class EntryPage implements Listener<CoilEntry, Outcome> {
  private readonly log: HTMLElement;
  /** The tag as this page has put it into its field. */
  private proposed = '';
  /** The meter whose reading stands in the field; empty for one that was typed. */
  private instrument = '';
  private readonly questions: SpoolQuestions;

  constructor(
    private readonly form: HTMLFormElement,
    private readonly batchId: string,
  ) {
    this.questions = new SpoolQuestions(form);
    this.log = document.getElementById('sent') ?? form;
  }

  /** The browser honours autofocus only when it next paints: a key pressed before that would be lost. */
  ready(): void {
    this.proposed = this.value('proposed');
    const wanted = this.form.dataset.wanted ?? '';
    if (wanted !== '') {
      this.field('tag').value = wanted; // scanned: it wins over a draft of another coil
    }
    this.questions.show(this.field('tag').value);
    this.field('tag').addEventListener('input', () => this.questions.show(this.field('tag').value));
    this.field('resistance').addEventListener('input', event => {
      this.instrument = event.isTrusted ? '' : this.instrument;
    });
    if (document.activeElement === null || document.activeElement === document.body) {
      this.field('resistance').focus();
    }
  }

  /** What a meter read: into the field for ohms, and hands free saved under the reading's own id, so that it is never recorded twice. */
  takeReading(outbox: Outbox<CoilEntry, Outcome>, typed: string, instrument: string, saveAs: string | null): boolean {
    const resistance = this.field('resistance');
    if (saveAs !== null && resistance.value.trim() !== '') {
      return false; // what a person types is not written over
    }
    resistance.value = typed;
    this.instrument = instrument;
    resistance.dispatchEvent(new Event('input', { bubbles: true }));
    if (saveAs === null) {
      resistance.focus();
    } else {
      this.submit(outbox, saveAs);
    }
    return true;
  }

  submit(outbox: Outbox<CoilEntry, Outcome>, id: string = newId()): void {
    const resistance = this.field('resistance');
    if (resistance.value.trim() === '') {
      resistance.focus();
      return;
    }
    const scanned = this.scanned(resistance.value);
    if (scanned !== null) {
      this.field('tag').value = scanned;
      this.clear('resistance');
      resistance.focus();
      return;
    }
    const open = undecided(this.form);
    if (open) {
      this.problems([{ field: open.name, message: whichOfTwo }]);
      open.focus();
      return;
    }
    const coil = this.questions.answer(this.field('tag').value);
    if (coil === null) {
      return;
    }
    const entry: CoilEntry = {
      id,
      batchId: this.batchId,
      tag: this.field('tag').value,
      proposed: this.field('tag').value !== '' && this.field('tag').value === this.proposed,
      resistance: resistance.value,
      temperature: this.value('temperature'),
      inductance: this.value('inductance'),
      inductanceAt: this.value('inductanceAt'),
      turns: this.value('turns'),
      instrument: this.instrument,
      person: this.value('person'),
      coil,
    };
    this.instrument = '';
    outbox.add(entry, this.form.dataset.name ?? '');
    for (const name of ['resistance', 'inductance', 'turns', 'tag', 'temperature']) {
      this.clear(name);
    }
    this.propose(following(entry.tag));
    this.questions.show(this.field('tag').value);
    this.problems([]);
    resistance.focus();
  }

  /** A bar-code reader types into the field for ohms: the tag in its code, or null when it is no tag of this batch. */
  private scanned(typed: string): string | null {
    const text = typed.trim();
    const name = (this.form.dataset.name ?? '') + '/';
    const prefix = this.form.dataset.prefix ?? '';
    const named = text.toLowerCase().startsWith(name.toLowerCase());
    const tag = named ? text.slice(name.length) : text;
    const number = tag.toLowerCase().startsWith(prefix.toLowerCase()) ? tag.slice(prefix.length) : '';
    const isTag = /^\d+$/.test(number) && Number(number) > 0 && (named || /\p{L}/u.test(prefix));
    return isTag ? prefix + String(Number(number)).padStart(3, '0') : null;
  }

  asked(question: string, isRight: () => void): void {
    showQuestion(this.log, question, isRight);
  }

  waiting(entry: CoilEntry, where: string): void {
    const isNew = document.getElementById(`sent-${entry.id}`) === null;
    this.row(entry, where);
    if (isNew && this.field('tag').value === entry.tag) {
      this.propose(following(entry.tag));
    }
  }

  sending(entry: CoilEntry): void {
    this.row(entry, 'sending');
  }

  answered(entry: CoilEntry, outcome: Outcome): void {
    if (outcome.problems.length > 0 || outcome.verdict === null) {
      this.row(entry, 'not saved');
      if (!this.giveBack(entry, freeOf(outcome.problems))) {
        keepRefused({ entry, about: this.form.dataset.name ?? '', problems: outcome.problems });
        window.dispatchEvent(new StorageEvent('storage')); // this page shows it as any other does
        return;
      }
      this.problems(outcome.problems);
      return;
    }
    this.row(entry, `saved ${clockTime(new Date())}`);
    this.show(entry, outcome);
    this.ended(entry, outcome);
    sound(outcome.verdict.kind);
  }

  /** A batch ends at its number: no tag is proposed beyond it, and the page says what can be done. */
  private ended(entry: CoilEntry, outcome: Outcome): void {
    const isDone = outcome.nextTag === null;
    for (const place of document.querySelectorAll('[data-count]')) {
      place.textContent = outcome.count;
    }
    if (isDone && this.field('tag').value === following(entry.tag)) {
      this.field('tag').value = '';
    }
    document.getElementById('more-wanted')?.toggleAttribute('hidden', !isDone);
  }

  private show(entry: CoilEntry, outcome: Outcome): void {
    const verdict = outcome.verdict;
    const place = document.getElementById('verdict');
    if (!place || !verdict) {
      return;
    }
    place.dataset.kind = verdict.kind;
    const shapes = { pass: '✓', hold: '‖', reject: '✕' };
    const mark = element('span', 'shape', shapes[verdict.kind]);
    mark.setAttribute('aria-hidden', 'true');
    const word = element('strong', 'word', '');
    word.append(mark, element('span', '', verdict.kind));
    place.replaceChildren(
      element('span', 'about', entry.tag),
      word,
      element('span', 'echo', outcome.echo),
      element('span', 'reasons', verdict.reasons.join('; ')),
      ...[verdict.cause, verdict.check, outcome.signal]
        .filter(words => words !== '')
        .map(words => element('span', 'reasons advice', words)),
    );
    const undo = this.form.querySelector<HTMLButtonElement>('button[formaction$="/undo"]');
    if (undo) {
      undo.disabled = false;
      undo.textContent = `Undo ${entry.tag}`;
    }
  }

  elsewhere(entry: CoilEntry): void {
    this.row(entry, 'sent by another page of this tablet');
  }

  /** What was refused comes back into the fields and stays a draft, unless the person has begun to type the next coil: then false. */
  private giveBack(entry: CoilEntry, free: string | null): boolean {
    const resistance = this.field('resistance');
    if (resistance.value !== '') {
      return false;
    }
    resistance.value = entry.resistance;
    this.field('tag').value = free ?? entry.tag;
    this.proposed = free ?? (entry.proposed ? entry.tag : this.proposed);
    this.set('temperature', entry.temperature);
    this.set('inductance', entry.inductance);
    this.set('turns', entry.turns);
    for (const name of ['tag', 'resistance', 'temperature', 'inductance', 'turns']) {
      this.field(name).dispatchEvent(new Event('input', { bubbles: true }));
    }
    resistance.focus();
    resistance.select();
    return true;
  }

  private propose(tag: string): void {
    this.field('tag').value = tag;
    this.proposed = tag;
  }

  private problems(problems: Problem[]): void {
    for (const old of this.form.querySelectorAll('.problem')) {
      old.remove();
    }
    for (const problem of problems) {
      const name = problem.field.split('.').pop() ?? '';
      const field = this.form.elements.namedItem(name) ?? this.field('resistance');
      const note = element('span', 'problem', sentences(problem));
      note.setAttribute('role', 'alert');
      (field instanceof HTMLElement ? field.closest('.field') : this.form)?.append(note);
    }
  }

  private row(entry: CoilEntry, where: string): void {
    let row = document.getElementById(`sent-${entry.id}`);
    if (!row) {
      row = element('li', '', '');
      row.id = `sent-${entry.id}`;
      row.append(element('span', 'about', `${entry.tag}: ${entry.resistance}`), element('span', 'where', ''));
      this.log.prepend(row);
      while (this.log.children.length > 8) {
        this.log.lastElementChild?.remove();
      }
    }
    const place = row.querySelector('.where');
    if (place) {
      place.textContent = where;
    }
  }

  private clear(name: string): void {
    forgetDraft(this.form.dataset.drafts ?? '', name);
    const field = this.form.elements.namedItem(name);
    if (field instanceof HTMLInputElement) {
      field.value = '';
      say(field, '');
      forgetUnderstanding(field);
    }
  }

  private field(name: string): HTMLInputElement {
    return this.form.elements.namedItem(name) as HTMLInputElement;
  }

  private value(name: string): string {
    const field = this.form.elements.namedItem(name);
    return field instanceof HTMLInputElement ? field.value : '';
  }

  private set(name: string, value: string): void {
    const field = this.form.elements.namedItem(name);
    if (field instanceof HTMLInputElement) {
      field.value = value;
    }
  }
}

/** The tag that takes the place of one that another bench has used meanwhile; null when none was. */
function freeOf(problems: Problem[]): string | null {
  return problems.find(problem => problem.field === 'tag')?.readings?.[0] ?? null;
}

/** "C-014" is followed by "C-015". */
export function following(tag: string): string {
  const match = /^(.*?)(\d+)$/.exec(tag);
  return match ? (match[1] ?? '') + String(Number(match[2]) + 1).padStart((match[2] ?? '').length, '0') : tag;
}

function element(name: string, className: string, text: string): HTMLElement {
  const made = document.createElement(name);
  if (className !== '') {
    made.className = className;
  }
  made.textContent = text;
  return made;
}
