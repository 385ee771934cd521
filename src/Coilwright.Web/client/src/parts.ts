import { forgetDrafts } from './drafts';
import { read, remove, write } from './store';

/**
 * A draft with other parts than the saved revision is kept as a whole; the page that was asked for shows the saved one, so the form is
 * sent once for the draft's own fields.
 * @returns true when that is under way and nothing else need be done with the page
 */
export function partsDraft(form: HTMLFormElement): boolean {
  const parts = partsOf(form);
  const record = form.dataset.drafts ?? '';
  if (!parts) {
    return false;
  }
  if (form.dataset.partsMade !== undefined) {
    forgetDrafts(record); // the fields typed before stand in the whole
    if (parts.value !== '') {
      write(keyOf(form), parts.value);
    }
    return false;
  }
  if (form.dataset.posted !== undefined && parts.value === '') {
    forgetParts(form);
  }
  const kept = read(keyOf(form));
  if (kept === null || parts.value !== '') {
    return false;
  }
  if (form.dataset.draftsAsleep !== undefined) {
    parts.dataset.words = 'other parts';
    parts.dataset.asleep = '';
    return false;
  }
  parts.value = kept;
  for (const field of form.querySelectorAll<HTMLInputElement>('[data-saved]')) {
    field.disabled = true; // what the saved revision has there is not the draft's
  }
  form.action = `${form.getAttribute('action') ?? ''}/preview?view=${form.dataset.view ?? ''}`;
  form.submit();
  return true;
}

/** What the draft has more or less of than the saved revision, in words; empty when it has the same parts. */
export function partsChanged(form: HTMLFormElement): string {
  const parts = partsOf(form);
  return parts && (parts.value !== '' || parts.dataset.asleep !== undefined) ? (parts.dataset.words ?? '') : '';
}

/** Forgets the draft's own parts; the saved page has to be asked for again then. */
export function forgetParts(form: HTMLFormElement): void {
  remove(keyOf(form));
}

function partsOf(form: HTMLFormElement): HTMLInputElement | null {
  return form.querySelector<HTMLInputElement>('input[name=parts]');
}

function keyOf(form: HTMLFormElement): string {
  return `draft/${form.dataset.drafts ?? ''}/parts`;
}
