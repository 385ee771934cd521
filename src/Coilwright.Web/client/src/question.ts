/** Which coil a tag means that is entered again after its undo while another spool is on: asked once, beside the fields. */
export class SpoolQuestions {
  private readonly asked = new Set<string>();

  constructor(private readonly form: HTMLFormElement) {}

  /** Shows the question of this tag and no other. */
  show(tag: string): void {
    for (const part of this.parts()) {
      part.hidden = !isOf(part, tag);
    }
  }

  /** "same" or "new"; empty without an answer, null when it must be asked first. */
  answer(tag: string): string | null {
    const part = this.parts().find(one => isOf(one, tag));
    if (!part) {
      return '';
    }
    const chosen = part.querySelector<HTMLInputElement>('input:checked');
    if (chosen || this.asked.has(tag)) {
      part.remove(); // it is asked once
      return chosen?.value ?? '';
    }
    this.asked.add(tag);
    part.hidden = false;
    part.classList.add('open');
    part.querySelector<HTMLInputElement>('input[type=radio]')?.focus();
    return null;
  }

  private parts(): HTMLElement[] {
    return Array.from(this.form.querySelectorAll<HTMLElement>('[data-question]'));
  }
}

function isOf(part: HTMLElement, tag: string): boolean {
  return (part.dataset.question ?? '').toLowerCase() === tag.trim().toLowerCase();
}
