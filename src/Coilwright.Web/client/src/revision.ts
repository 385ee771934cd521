import { dropDraft, kept } from './drafts';
import { forgetParts, partsChanged } from './parts';

type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

const shownAtMost = 4;

/** Fields of the revision itself: not of the load, the reason or the person. */
export function revisionFields(form: HTMLFormElement): Field[] {
  return Array.from(form.querySelectorAll<Field>('input[data-saved], select[data-saved]'));
}

/**
 * Says above the answers whether the page shows the revision as saved or a draft of this tablet, and gives the way from one to the
 * other.
 */
export function revisionDraft(form: HTMLFormElement, bar: HTMLElement): void {
  new RevisionDraft(form, bar).begin();
}

class RevisionDraft {
  private readonly words: HTMLElement;
  private discarded = new Map<Field, string>();

  constructor(
    private readonly form: HTMLFormElement,
    private readonly bar: HTMLElement,
  ) {
    this.words = bar.querySelector('[data-words]') ?? bar;
  }

  begin(): void {
    if (this.changes().length === 0) {
      delete this.form.dataset.draftsAsleep; // nothing sleeps: what is typed from here on is the draft
    }
    this.form.addEventListener('input', () => this.show());
    this.form.addEventListener('change', () => this.show());
    this.button('discard')?.addEventListener('click', () => this.discard());
    this.button('bring-back')?.addEventListener('click', () => this.bringBack());
    this.button('save')?.addEventListener('click', event => this.save(event));
    this.show();
  }

  private get asleep(): boolean {
    return this.form.dataset.draftsAsleep !== undefined;
  }

  /**
   * A draft that is kept while the page shows the revision as saved must not be mixed with what is typed here: the fields rest until
   * one of the two is chosen.
   */
  private show(): void {
    const changes = this.changes();
    const sleeping = this.asleep && changes.length > 0;
    for (const field of revisionFields(this.form)) {
      field.disabled = sleeping;
    }
    for (const slider of this.form.querySelectorAll<HTMLInputElement>('[data-revision-fields] input[type=range]')) {
      slider.disabled = sleeping;
    }
    const drawn = changes.length > 0 && !sleeping;
    const below = drawn ? 'The numbers below are of the draft.' : `The numbers below are of ${this.bar.dataset.shown ?? ''}.`;
    this.words.textContent =
      changes.length > 0 ? `Unsaved changes on this tablet: ${list(changes)}. ${below}` : `The changes were discarded. ${below}`;
    this.bar.hidden = changes.length === 0 && this.discarded.size === 0;
    this.bar.dataset.kind = drawn ? 'draft' : 'saved';
    for (const part of this.bar.querySelectorAll<HTMLElement>('[data-when]')) {
      part.hidden = !(part.dataset.when ?? '').split(' ').includes(drawn ? 'draft' : sleeping ? 'asleep' : 'discarded');
    }
    for (const part of document.querySelectorAll<HTMLElement>('[data-heading]')) {
      part.hidden = (part.dataset.heading === 'draft') !== drawn;
    }
  }

  private changes(): string[] {
    const fields = revisionFields(this.form);
    const parts = partsChanged(this.form);
    const typed = fields.flatMap(field => {
      const now = (this.asleep ? (kept(this.form, field) ?? savedOf(field)) : field.value).trim();
      return now === savedOf(field) ? [] : [`${this.nameOf(field, fields)} ${written(now)} instead of ${written(savedOf(field))}`];
    });
    return parts === '' ? typed : [parts, ...typed];
  }

  private nameOf(field: Field, all: Field[]): string {
    const label = labelOf(field);
    const name = label.charAt(0).toLowerCase() + label.slice(1);
    const twice = all.filter(other => labelOf(other) === label).length > 1;
    const group = field.closest('details')?.querySelector('summary')?.textContent?.trim() ?? '';
    return twice && group !== '' ? `${name} (${group.charAt(0).toLowerCase()}${group.slice(1)})` : name;
  }

  private discard(): void {
    if (partsChanged(this.form) !== '') {
      this.discardParts();
      return;
    }
    this.discarded = new Map();
    for (const field of revisionFields(this.form)) {
      const now = this.asleep ? kept(this.form, field) : field.value;
      if (now !== null && now !== savedOf(field)) {
        this.discarded.set(field, now);
        field.value = savedOf(field);
      }
    }
    if (!this.asleep) {
      this.form.dispatchEvent(new Event('input', { bubbles: true }));
    }
    revisionFields(this.form).forEach(field => dropDraft(this.form, field));
    this.show();
    this.button('bring-back')?.focus();
  }

  /** The fields of a draft with other parts are others than the saved ones: the saved page is asked for. */
  private discardParts(): void {
    revisionFields(this.form).forEach(field => dropDraft(this.form, field));
    forgetParts(this.form);
    window.location.assign(this.form.getAttribute('action') ?? '');
  }

  private bringBack(): void {
    delete this.form.dataset.draftsAsleep;
    for (const [field, value] of this.discarded) {
      field.disabled = false;
      field.value = value;
      field.dispatchEvent(new Event('input', { bubbles: true }));
    }
    this.discarded = new Map();
    this.show();
  }

  /** A revision after a released one needs its reason: the way to that field is shorter than an answer that asks for it. */
  private save(event: Event): void {
    const reason = this.form.querySelector<HTMLInputElement>('input[name=reason]');
    if (reason && this.bar.dataset.reason !== undefined && reason.value.trim() === '') {
      event.preventDefault();
      this.words.textContent += ' Say why first, in "Reason for the change".';
      reason.focus();
    }
  }

  private button(name: string): HTMLButtonElement | null {
    return this.bar.querySelector<HTMLButtonElement>(`button[data-do=${name}]`);
  }
}

function savedOf(field: Field): string {
  return (field.dataset.saved ?? '').trim();
}

function labelOf(field: Field): string {
  return field.labels?.[0]?.textContent?.trim() ?? field.name;
}

/** A count in groups of three, as every page prints it; anything else as typed. */
function written(text: string): string {
  return text === '' ? 'nothing' : /^\d{4,}$/.test(text) ? text.replace(/\B(?=(\d{3})+$)/g, ',') : text;
}

function list(changes: string[]): string {
  const rest = changes.length - shownAtMost;
  return changes.slice(0, shownAtMost).join('; ') + (rest > 0 ? `; and ${rest} more` : '');
}
