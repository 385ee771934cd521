import { keysUnder, read, remove, write } from './store';

type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

/** Keeps every field of a form in the browser until the server has confirmed it; says beside each field where its value is. */
export function keepDrafts(form: HTMLFormElement): void {
  const record = form.dataset.drafts ?? '';
  for (const field of fieldsOf(form)) {
    const key = keyOf(record, field.name);
    const kept = read(key);
    if (typedAlready(field)) {
      keep(field, key);
    } else if (kept !== null && kept !== field.value) {
      field.value = kept;
      say(field, 'on this tablet');
    }
    field.addEventListener('input', () => keep(field, key));
    field.addEventListener('change', () => keep(field, key));
  }
}

/** Drops what was kept for a record, once the server has confirmed it. */
export function forgetDrafts(record: string): void {
  for (const key of keysUnder(`draft/${record}/`)) {
    remove(key);
  }
}

export function forgetDraft(record: string, name: string): void {
  remove(keyOf(record, name));
}

export function say(field: Field, where: string): void {
  const place = field.closest('.field')?.querySelector<HTMLElement>('.where');
  if (place) {
    place.textContent = where;
  }
}

/** A quick hand types before this script runs; what it typed wins over an older draft. */
function typedAlready(field: Field): boolean {
  return field === document.activeElement && !(field instanceof HTMLSelectElement) && field.value !== field.defaultValue;
}

function keep(field: Field, key: string): void {
  say(field, write(key, field.value) ? 'on this tablet' : 'only on this page');
}

function keyOf(record: string, name: string): string {
  return `draft/${record}/${name}`;
}

function fieldsOf(form: HTMLFormElement): Field[] {
  return Array.from(form.elements).filter((element): element is Field =>
    (element instanceof HTMLInputElement && element.type !== 'hidden' && element.type !== 'range') ||
    element instanceof HTMLTextAreaElement || element instanceof HTMLSelectElement)
    .filter(field => field.name !== '' && field.dataset.draft !== 'no');
}
