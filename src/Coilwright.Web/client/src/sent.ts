import type { Problem } from './outbox';

/** Shows in a list where an entry is: "on this tablet", "sending", "saved 14:32", "not saved". Gives its row. */
export function sentRow(list: HTMLElement, id: string, words: string, where: string): HTMLElement {
  let row = document.getElementById(id);
  if (!row) {
    row = document.createElement('li');
    row.id = id;
    const about = document.createElement('span');
    about.className = 'about';
    about.textContent = words;
    const place = document.createElement('span');
    place.className = 'where';
    row.append(about, place);
    list.prepend(row);
  }
  const place = row.querySelector('.where');
  if (place) {
    place.textContent = where;
  }
  return row;
}

/** A problem as whole sentences. */
export function sentences(problem: Problem): string {
  const parts = [
    problem.message,
    problem.understood ? `Understood: ${problem.understood}` : '',
    problem.allowed ? `Allowed: ${problem.allowed}` : '',
  ];
  return parts
    .filter(part => part !== '')
    .map(part => part.charAt(0).toUpperCase() + part.slice(1) + (/[.?!…]$/.test(part) ? '' : '.'))
    .join(' ');
}

/** Tells every problem before a list; what was told before goes away. */
export function showProblems(list: HTMLElement, problems: Problem[]): void {
  clearProblems();
  const shown = document.createElement('ul');
  shown.className = 'problems';
  shown.setAttribute('role', 'alert');
  for (const problem of problems) {
    const item = document.createElement('li');
    item.textContent = sentences(problem);
    shown.append(item);
  }
  list.before(shown);
}

export function clearProblems(): void {
  for (const old of document.querySelectorAll('.problems')) {
    old.remove();
  }
}
