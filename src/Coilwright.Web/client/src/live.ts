const atMostUnderWay = 2;
const workingAfterMs = 300;

/**
 * Newest wins: at most two requests under way, answers older than the drawn one are dropped, and without an answer the last drawn one
 * is dimmed.
 */
export class NewestWins<T> {
  private underWay = 0;
  private latest = 0;
  private drawn = 0;
  private pending: T | null = null;
  private readonly slow = new Map<number, number>();

  constructor(
    private readonly ask: (question: T) => Promise<string>,
    private readonly draw: (answer: string) => void,
    private readonly dim: (stale: boolean) => void,
  ) {}

  question(question: T): void {
    this.pending = question;
    this.begin();
  }

  private begin(): void {
    if (this.pending === null || this.underWay >= atMostUnderWay) {
      return;
    }
    const question = this.pending;
    const number = ++this.latest;
    this.pending = null;
    this.underWay++;
    this.slow.set(
      number,
      window.setTimeout(() => this.dim(number > this.drawn), workingAfterMs),
    );
    this.ask(question)
      .then(answer => {
        if (number > this.drawn) {
          this.drawn = number;
          this.settle(number);
          this.draw(answer);
          this.dim(number < this.latest);
        }
      })
      .catch(() => {
        if (number === this.latest) {
          this.dim(true);
        }
      })
      .finally(() => {
        window.clearTimeout(this.slow.get(number));
        this.slow.delete(number);
        this.underWay--;
        this.begin();
      });
  }

  /** What was asked before the drawn answer has no say any more: it must not dim what is newer than itself. */
  private settle(number: number): void {
    for (const [older, timer] of this.slow) {
      if (older <= number) {
        window.clearTimeout(timer);
        this.slow.delete(older);
      }
    }
  }
}

const settledAfterMs = 600;

/** What is asked of a form as it stands. */
interface Question {
  contents: URLSearchParams;
  view: string;
  settled: boolean;
  whole: boolean;
}

/**
 * Sends the form as it stands whenever a field moves, and shows the parts of the page that come back: the five answers, the drawing and
 * the view in sight. What takes longer than a slider may wait is asked for once the form has settled. Physics and wording live on the
 * server alone.
 */
export function liveForecast(form: HTMLFormElement, drawn: (part: HTMLElement) => void): void {
  const named = Array.from(form.querySelectorAll<HTMLElement>('[data-part]'));
  const parts = named.length > 0 ? named : Array.from(form.querySelectorAll<HTMLElement>('#forecast')); // one part is the whole answer
  const view = form.querySelector<HTMLElement>('[data-part=view]');
  let timer = 0;
  const newest = new NewestWins<Question>(ask(form.dataset.live ?? ''), html => show(parts, html, drawn), stale => {
    for (const part of parts) {
      part.classList.toggle('stale', stale);
      part.setAttribute('aria-busy', String(stale));
    }
  });
  const question = (settled: boolean, whole = false): void =>
    newest.question({ contents: contentsOf(form), view: form.dataset.view ?? '', settled, whole });
  const changed = (): void => {
    window.clearTimeout(timer);
    question(false);
    if (form.dataset.view === 'sound') {
      timer = window.setTimeout(() => question(true), settledAfterMs);
    }
  };
  form.addEventListener('input', changed);
  for (const link of form.querySelectorAll<HTMLElement>('.tabs [data-view]')) {
    link.addEventListener('click', event => {
      if (event instanceof MouseEvent && (event.ctrlKey || event.metaKey || event.shiftKey)) {
        return;
      }
      event.preventDefault();
      choose(form, link);
      view?.replaceChildren();
      question(true, true);
    });
  }
  window.clearTimeout(timer);
  question(true);
}

function ask(address: string): (question: Question) => Promise<string> {
  return async ({ contents, view, settled, whole }) => {
    const asked = new URLSearchParams({ view, ...(settled ? { settled: 'yes' } : {}), ...(whole ? { whole: 'yes' } : {}) });
    const answer = await fetch(`${address}?${asked.toString()}`, { method: 'POST', body: contents });
    if (!answer.ok) {
      throw new Error(`no forecast: ${answer.status}`);
    }
    return answer.text();
  };
}

/** Puts each part that came back where it stands; what was opened in it stays open. */
function show(parts: HTMLElement[], html: string, drawn: (part: HTMLElement) => void): void {
  const answer = document.createElement('template');
  answer.innerHTML = html;
  for (const part of parts) {
    const name = part.dataset.part;
    const made = name === undefined ? answer.content : answer.content.querySelector<HTMLElement>(`[data-part=${name}]`);
    if (!made) {
      continue;
    }
    const before = new Map(Array.from(part.querySelectorAll<HTMLDetailsElement>('details'), one => [one.dataset.key, one.open]));
    for (const details of made.querySelectorAll<HTMLDetailsElement>('details')) {
      details.open = before.get(details.dataset.key) ?? details.open;
    }
    part.replaceChildren(...made.childNodes);
    drawn(part);
  }
}

/** Another view comes into sight; its address is that of its link, so that it can be sent on and come back to. */
function choose(form: HTMLFormElement, link: HTMLElement): void {
  form.dataset.view = link.dataset.view ?? '';
  for (const other of form.querySelectorAll<HTMLElement>('.tabs [data-view]')) {
    other.toggleAttribute('aria-current', false);
  }
  link.setAttribute('aria-current', 'page');
  if (link instanceof HTMLAnchorElement) {
    window.history.replaceState(null, '', link.href);
  }
}

/** A slider moves the text field it stands under; the field stays the truth. */
export function slider(range: HTMLInputElement): void {
  const field = document.getElementById(range.dataset.drives ?? '');
  if (!(field instanceof HTMLInputElement)) {
    return;
  }
  const follow = (): void => {
    const number = parseFloat(field.value.replace(',', '.'));
    if (!Number.isNaN(number)) {
      range.value = String(number);
    }
  };
  range.addEventListener('input', event => {
    event.stopPropagation();
    const unit = range.dataset.unit ?? '';
    field.value = range.value + unit + intervalOf(field.value, unit);
    field.dispatchEvent(new Event('input', { bubbles: true }));
  });
  field.addEventListener('input', follow);
  follow();
}

/** What stands behind the ± of a length, which a slider leaves as it is; a bare number there was in the unit of the old length. */
function intervalOf(typed: string, unit: string): string {
  const behind = /(?:±|\+\/?-)\s*(\S.*?)\s*$/.exec(typed)?.[1] ?? '';
  const bare = /[\d.,]$/.test(behind);
  return behind === '' || (bare && !typed.includes(unit.trim())) ? '' : ` ± ${behind}`;
}

/** The text fields of a form as they stand. */
export function contentsOf(form: HTMLFormElement): URLSearchParams {
  const contents = new URLSearchParams();
  for (const [name, value] of new FormData(form)) {
    if (typeof value === 'string') {
      contents.append(name, value);
    }
  }
  return contents;
}
