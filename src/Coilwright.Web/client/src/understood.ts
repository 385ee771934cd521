const waitMs = 120;

/** Shows beside each field how the server understands what stands in it; where two readings are possible, one touch takes one of them. */
export function understandings(): void {
  for (const field of document.querySelectorAll<HTMLInputElement>('input[data-understood]')) {
    follow(field);
  }
  document.addEventListener('click', event => {
    const button = event.target instanceof Element ? event.target.closest<HTMLElement>('button[data-take]') : null;
    const field = button?.closest('.field')?.querySelector<HTMLInputElement>('input[data-understood]');
    if (button && field) {
      field.value = button.dataset.take ?? '';
      field.dispatchEvent(new Event('input', { bubbles: true }));
      field.focus();
    }
  });
}

function follow(field: HTMLInputElement): void {
  let waiting = 0;
  let newest = 0;
  const ask = async (): Promise<void> => {
    const number = ++newest;
    const shown = await answer(field);
    if (number === newest) {
      show(field, shown);
    }
  };
  field.addEventListener('input', () => {
    window.clearTimeout(waiting);
    waiting = window.setTimeout(() => void ask(), waitMs);
  });
  if (field.value !== '') {
    void ask(); // a draft may stand here that the server has not seen
  }
}

/** Empty without an answer: an older understanding beside a newer text would be worse than none. */
async function answer(field: HTMLInputElement): Promise<string> {
  try {
    const asked = new URLSearchParams({ field: field.dataset.understood ?? '', typed: field.value });
    const reply = await fetch(`/understood?${asked.toString()}`);
    return reply.ok ? await reply.text() : '';
  } catch {
    return '';
  }
}

function show(field: HTMLInputElement, html: string): void {
  const place = field.closest('.field')?.querySelector<HTMLElement>('[data-understanding]');
  if (!place) {
    return;
  }
  const part = document.createElement('template');
  part.innerHTML = html;
  place.replaceChildren(...(part.content.firstElementChild?.childNodes ?? []));
  const number = part.content.querySelector<HTMLElement>('[data-number]')?.dataset.number;
  const range = document.querySelector<HTMLInputElement>(`input[type=range][data-drives="${CSS.escape(field.id)}"]`);
  if (range && number !== undefined) {
    range.value = number;
  }
}
