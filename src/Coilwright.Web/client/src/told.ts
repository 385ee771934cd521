import { showQuestion } from './asked';
import { forgetDrafts, keepAgain } from './drafts';
import { newId } from './ids';
import { Outbox, type Listener, type Problem } from './outbox';
import { clearProblems, sentRow, showProblems } from './sent';
import { clockTime } from './store';
import { undecided, whichOfTwo } from './understood';

/** A form about pieces as a person filled it in. */
interface Told {
  id: string;
  what: string;
  fields: [string, string][];
}

interface Answer {
  problems: Problem[];
  next: string;
}

const quietMs = 400;

/**
 * Steps and final tests: what a person enters goes into one outbox, in order, that outlives the network, the server and
 * the page. Any page sends what waits; the page that it was entered on is drawn anew once all of it is saved.
 */
export function tellings(): void {
  const page = new ToldPage();
  for (const form of document.querySelectorAll<HTMLFormElement>('form[data-tells]')) {
    form.addEventListener('submit', event => page.submit(form, event));
  }
  for (const form of document.querySelectorAll<HTMLFormElement>('form[data-next]')) {
    form.addEventListener('submit', event => page.next(form, event));
  }
  page.begin();
}

class ToldPage implements Listener<Told, Answer> {
  private readonly outbox = new Outbox<Told, Answer>('outbox/pieces/', '/api/pieces/told', this);
  private readonly form: HTMLFormElement | null = document.querySelector('form[data-tells][data-drafts]');
  private last = { what: '', atMs: -quietMs };
  private refused = false;

  begin(): void {
    if (!this.form && this.outbox.waitingCount() === 0) {
      return;
    }
    window.addEventListener('online', () => void this.outbox.flush());
    document.addEventListener('visibilitychange', () => void this.outbox.flush());
    this.outbox.resume();
  }

  submit(form: HTMLFormElement, event: SubmitEvent): void {
    const sender = event.submitter;
    const what = (sender instanceof HTMLElement ? sender.dataset.tell : undefined) ?? form.dataset.tells ?? '';
    if (what === '') {
      return; // another button of the form: it is sent as a form
    }
    event.preventDefault();
    const open = undecided(form);
    if (open) {
      showProblems(this.list(), [{ field: open.name, message: whichOfTwo }]);
      open.focus();
      return;
    }
    const fields = Array.from(new FormData(form).entries())
      .map(([name, value]): [string, string] => [name, String(value)])
      .filter(([name, value]) => name !== 'id' && value !== '');
    const now = performance.now();
    const wanting =
      what !== 'test' && !fields.some(([name]) => name === 'piece')
        ? 'no piece is ticked'
        : what === 'test' && fields.every(([name]) => name === 'piece')
          ? 'nothing was measured'
          : '';
    if (wanting !== '' && what === this.last.what && now - this.last.atMs < quietMs) {
      return; // the second press of a double press: the first has emptied the form
    }
    if (wanting !== '') {
      showProblems(this.list(), [{ field: what, message: wanting }]);
      form.querySelector<HTMLInputElement>('input:not([type=hidden])')?.focus();
      return;
    }
    this.last = { what, atMs: now };
    this.refused = false;
    clearProblems();
    if (form.dataset.drafts !== undefined) {
      forgetDrafts(form.dataset.drafts);
    }
    empty(form);
    this.outbox.add({ id: newId(), what, fields });
  }

  /** The next piece's own page cannot be had while the server is away: then its test is entered on this one. */
  next(form: HTMLFormElement, event: SubmitEvent): void {
    const serial = form.querySelector<HTMLInputElement>('input[name=piece]');
    const piece = this.form?.querySelector<HTMLInputElement>('input[type=hidden][name=piece]');
    if (!serial || !piece || !this.form || this.outbox.waitingCount() === 0) {
      return;
    }
    event.preventDefault();
    piece.value = serial.value.trim();
    serial.value = '';
    this.form.dataset.drafts = `test/${piece.value}`;
    const heading = document.querySelector('h1');
    if (heading) {
      heading.textContent = `Final test of ${piece.value}`;
    }
    for (const asked of document.querySelectorAll<HTMLElement>('[data-asked]')) {
      asked.hidden = true; // it was asked of the piece before
    }
    this.form.querySelector<HTMLInputElement>('input[name=resistance]')?.focus();
  }

  asked(question: string, isRight: () => void): void {
    showQuestion(this.list(), question, isRight);
  }

  waiting(one: Told, where: string): void {
    this.row(one, where);
  }

  sending(one: Told): void {
    this.row(one, 'sending');
  }

  answered(one: Told, answer: Answer): void {
    if (answer.problems.length > 0) {
      this.refused = true;
      this.giveBack(one, this.row(one, 'not saved'));
      showProblems(this.list(), answer.problems);
      return;
    }
    this.row(one, `saved ${clockTime(new Date())}`);
    const onTheMove =
      this.form !== null &&
      Array.from(this.form.elements).some(
        field =>
          field instanceof HTMLInputElement &&
          field.type !== 'hidden' &&
          field.name !== 'person' &&
          (isTick(field) ? field.checked : field.value !== ''),
      );
    const here = this.form !== null && new URL(answer.next, window.location.href).pathname === window.location.pathname;
    if (here && this.outbox.waitingCount() === 0 && !this.refused && !onTheMove) {
      window.location.assign(answer.next);
    }
  }

  /** What was refused stays a draft of its form; it comes back into the fields at once where they are empty. */
  private giveBack(one: Told, row: HTMLElement): void {
    const record = one.what === 'test' ? `test/${pieceOf(one)}` : 'clocks/main';
    const here = this.form?.dataset.drafts === record ? this.form : null;
    keepAgain(record, one.fields, here);
    if (!here && !row.querySelector('a')) {
      const link = document.createElement('a');
      link.href = one.what === 'test' ? `/test?piece=${encodeURIComponent(pieceOf(one))}` : '/clocks';
      link.textContent = 'look at it again';
      row.append(link);
    }
  }

  private row(one: Told, where: string): HTMLElement {
    const value = (name: string): string => one.fields.find(([key]) => key === name)?.[1] ?? '';
    const pieces = one.fields
      .filter(([name]) => name === 'piece')
      .map(([, serial]) => serial)
      .join(', ');
    const words =
      one.what === 'test' ? `${pieces}: ${value('resistance')}` : `${value('step')}${one.what === 'end' ? ' ended' : ''}: ${pieces}`;
    return sentRow(this.list(), `told-${one.id}`, words, where);
  }

  /** The page's own list, or one made at its beginning. */
  private list(): HTMLElement {
    const there = document.querySelector<HTMLElement>('[data-told]');
    if (there) {
      return there;
    }
    const made = document.createElement('ul');
    made.className = 'sent';
    made.dataset.told = 'any';
    made.setAttribute('aria-label', 'Entries from this tablet');
    made.setAttribute('aria-live', 'polite');
    document.querySelector('main')?.prepend(made);
    return made;
  }
}

function pieceOf(one: Told): string {
  return one.fields.find(([name]) => name === 'piece')?.[1] ?? '';
}

function isTick(field: HTMLInputElement): boolean {
  return field.type === 'checkbox' || field.type === 'radio';
}

function empty(form: HTMLFormElement): void {
  for (const field of form.elements) {
    if (field instanceof HTMLInputElement && isTick(field)) {
      field.checked = false;
    } else if (
      (field instanceof HTMLInputElement && field.type !== 'hidden' && field.name !== 'person') ||
      field instanceof HTMLTextAreaElement
    ) {
      field.value = '';
    }
  }
}
