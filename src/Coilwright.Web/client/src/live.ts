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

/**
 * Sends the form as it stands whenever a field moves, and shows the forecast that comes back. Physics and wording live on the server
 * alone.
 */
export function liveForecast(form: HTMLFormElement, panel: HTMLElement, drawn: (panel: HTMLElement) => void): void {
  const address = form.dataset.live ?? '';
  const after = panel.querySelector('[data-after]'); // answered on its own, so it outlives the panel's contents
  const newest = new NewestWins<URLSearchParams>(
    async question => {
      const answer = await fetch(address, { method: 'POST', body: question });
      if (!answer.ok) {
        throw new Error(`no forecast: ${answer.status}`);
      }
      return answer.text();
    },
    html => {
      const open = Array.from(panel.querySelectorAll<HTMLDetailsElement>('details[open]'), details => details.dataset.key);
      panel.innerHTML = html;
      if (after) {
        panel.querySelector('[data-slot=after]')?.append(after);
      }
      for (const details of panel.querySelectorAll<HTMLDetailsElement>('details')) {
        details.open = open.includes(details.dataset.key);
      }
      drawn(panel);
    },
    stale => {
      panel.classList.toggle('stale', stale);
      panel.setAttribute('aria-busy', String(stale));
    },
  );
  const changed = (): void => newest.question(contentsOf(form));
  form.addEventListener('input', changed);
  changed();
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
    field.value = range.value + (range.dataset.unit ?? '');
    field.dispatchEvent(new Event('input', { bubbles: true }));
  });
  field.addEventListener('input', follow);
  follow();
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
