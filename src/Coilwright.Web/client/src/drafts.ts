import { keysUnder, read, remove, write } from './store';

type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

/**
 * Keeps every field of a form in the browser until the server has confirmed it; says beside each field where its value is. A page that
 * shows a revision as saved leaves its draft asleep.
 */
export function keepDrafts(form: HTMLFormElement): void {
  for (const field of fieldsOf(form)) {
    const draft = kept(form, field);
    const asleep = form.dataset.draftsAsleep !== undefined && field.dataset.saved !== undefined;
    if (typedAlready(field)) {
      keep(form, field);
    } else if (!asleep && draft !== null && draft !== valueOf(field) && put(field, draft)) {
      say(field, 'on this tablet');
      open(field);
    }
    field.addEventListener('input', () => keep(form, field));
    field.addEventListener('change', () => keep(form, field));
  }
}

/**
 * Makes what a server refused a draft again; in a form that stands there its empty fields are filled. What was typed since is left
 * alone.
 */
export function keepAgain(record: string, fields: [string, string][], form: HTMLFormElement | null): void {
  for (const [name, value] of fields) {
    const key = `draft/${record}/${name}`;
    const ticks = form ? fieldsOf(form).filter(field => field.name === name && isTick(field)) : [];
    for (const field of ticks.filter(tick => tick.value === value)) {
      put(field, ticked);
      keep(form!, field);
    }
    if (ticks.length > 0) {
      continue;
    }
    const field = form ? fieldsOf(form).find(one => one.name === name) : undefined;
    if (field && field.value === '') {
      field.value = value;
      keep(form!, field);
    } else if (!field && read(key) === null) {
      write(key, value);
    }
  }
}

/** Drops what was kept for a record, once the server has confirmed it. */
export function forgetDrafts(record: string): void {
  for (const key of keysUnder(`draft/${record}/`)) {
    remove(key);
  }
}

export function forgetDraft(record: string, name: string): void {
  remove(`draft/${record}/${name}`);
}

/** What is kept of a field; null for nothing. */
export function kept(form: HTMLFormElement, field: Field): string | null {
  return read(keyOf(recordOf(form), field));
}

/** Forgets what is kept of one field, and says so beside it. */
export function dropDraft(form: HTMLFormElement, field: Field): void {
  remove(keyOf(recordOf(form), field));
  say(field, '');
}

export function say(field: Field, where: string): void {
  const home = field.closest('.field');
  let place = home?.querySelector<HTMLElement>('.where') ?? null;
  if (!place && home && where !== '') {
    place = document.createElement('span');
    place.className = 'where';
    home.append(place);
  }
  if (place) {
    place.textContent = where;
  }
}

/** A quick hand types before this script runs; what it typed wins over an older draft. */
function typedAlready(field: Field): boolean {
  return field === document.activeElement && !(field instanceof HTMLSelectElement) && field.value !== field.defaultValue;
}

function keep(form: HTMLFormElement, field: Field): void {
  if (field instanceof HTMLInputElement && field.type === 'radio') {
    for (const other of fieldsOf(form).filter(one => one.name === field.name)) {
      remove(keyOf(recordOf(form), other)); // of several buttons one is pressed
    }
  }
  say(field, write(keyOf(recordOf(form), field), valueOf(field)) ? 'on this tablet' : 'only on this page');
}

function recordOf(form: HTMLFormElement): string {
  return form.dataset.drafts ?? '';
}

const ticked = 'ticked';

function isTick(field: Field): field is HTMLInputElement {
  return field instanceof HTMLInputElement && (field.type === 'checkbox' || field.type === 'radio');
}

/** Ticks share a name; each is kept by its value. */
function keyOf(record: string, field: Field): string {
  return `draft/${record}/${field.name}${isTick(field) ? `=${field.value}` : ''}`;
}

function valueOf(field: Field): string {
  return isTick(field) ? (field.checked ? ticked : '') : field.value;
}

/** False when the field cannot take the value: a choice that is offered no more. */
function put(field: Field, value: string): boolean {
  if (isTick(field)) {
    field.checked = value === ticked;
    return true;
  }
  if (field instanceof HTMLSelectElement && !Array.from(field.options).some(option => option.value === value)) {
    return false;
  }
  field.value = value;
  return true;
}

/** Opens every closed part of the page that an element stands in. */
export function openAbove(element: Element): void {
  for (let closed = element.closest('details'); closed; closed = closed.parentElement?.closest('details') ?? null) {
    closed.open = true;
  }
}

/** A draft in a closed part of the page is shown. */
function open(field: Field): void {
  if (valueOf(field) !== '') {
    openAbove(field);
  }
}

function fieldsOf(form: HTMLFormElement): Field[] {
  return Array.from(form.elements)
    .filter(
      (element): element is Field =>
        (element instanceof HTMLInputElement && element.type !== 'hidden' && element.type !== 'range') ||
        element instanceof HTMLTextAreaElement ||
        element instanceof HTMLSelectElement,
    )
    .filter(field => field.name !== '' && field.dataset.draft !== 'no');
}
