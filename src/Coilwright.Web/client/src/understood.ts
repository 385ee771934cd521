const waitMs = 120;

/** Said when an entry is sent while the person has not chosen yet. */
export const whichOfTwo = 'say first which of the two it is';

/** Shows beside each field how the server understands what stands in it; where two readings are possible, one touch takes one of them. */
export function understandings(): void {
  for (const field of document.querySelectorAll<HTMLInputElement>('input[data-understood]')) {
    follow(field);
  }
  document.addEventListener('click', event => {
    const button = event.target instanceof Element ? event.target.closest<HTMLButtonElement>('button[data-take]') : null;
    const field = button?.closest('.field')?.querySelector<HTMLInputElement>('input[data-understood]');
    if (button && field) {
      event.preventDefault();
      take(field, button);
    }
  });
}

/** The first field of a form of which the person has not said yet which of two readings is meant; null when there is none. */
export function undecided(form: HTMLFormElement): HTMLInputElement | null {
  return form.querySelector('[data-understanding] button[data-take]')?.closest('.field')?.querySelector('input') ?? null;
}

/** Forgets what was understood of a field that was emptied. */
export function forgetUnderstanding(field: HTMLInputElement): void {
  place(field)?.replaceChildren();
}

/** Puts the reading into the field; where it was the form that asked, the form is sent with it. */
function take(field: HTMLInputElement, button: HTMLButtonElement): void {
  const sends = button.type === 'submit' || field.dataset.takeSends !== undefined;
  field.value = button.dataset.take ?? '';
  field.dispatchEvent(new Event('input', { bubbles: true }));
  field.focus();
  if (sends) {
    field.form?.requestSubmit();
  }
}

function follow(field: HTMLInputElement): void {
  let waiting = 0;
  const ask = async (): Promise<void> => {
    const asked = field.value;
    const shown = await answer(field);
    if (field.value === asked) {
      show(field, shown);
    }
  };
  field.addEventListener('input', () => {
    for (const button of place(field)?.querySelectorAll('button') ?? []) {
      button.remove(); // a reading of the older text must not be taken for the newer one
    }
    window.clearTimeout(waiting);
    waiting = window.setTimeout(() => void ask(), waitMs);
  });
  if (field.value !== field.defaultValue) {
    void ask(); // a draft stands here that the server has not seen
  } else {
    moveSlider(field, place(field)?.dataset.number);
  }
}

/** Empty without an answer: an older understanding beside a newer text would be worse than none. */
async function answer(field: HTMLInputElement): Promise<string> {
  try {
    const { understood = '', expected } = field.dataset;
    const asked = new URLSearchParams({ field: understood, typed: field.value, ...(expected === undefined ? {} : { expected }) });
    const reply = await fetch(`/understood?${asked.toString()}`);
    return reply.ok ? await reply.text() : '';
  } catch {
    return '';
  }
}

function place(field: HTMLInputElement): HTMLElement | null {
  return field.closest('.field')?.querySelector<HTMLElement>('[data-understanding]') ?? null;
}

function show(field: HTMLInputElement, html: string): void {
  const part = document.createElement('template');
  part.innerHTML = html;
  place(field)?.replaceChildren(...(part.content.firstElementChild?.childNodes ?? []));
  moveSlider(field, part.content.querySelector<HTMLElement>('[data-number]')?.dataset.number);
}

function moveSlider(field: HTMLInputElement, number: string | undefined): void {
  const range = document.querySelector<HTMLInputElement>(`input[type=range][data-drives="${CSS.escape(field.id)}"]`);
  if (range && number !== undefined) {
    range.value = number;
  }
}
