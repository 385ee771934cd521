import type { Problem } from './outbox';
import { sentences } from './sent';

/** Where an entry is while the server asks about its clock. */
export const waitsForClock = 'on this tablet: waits until the question about the clock is answered';

/** The server's question whether its clock is right, in an answer that stored nothing; null when it asked nothing. */
export function clockQuestion(answer: { problems?: Problem[] }): string | null {
  const asked = answer.problems?.find(problem => problem.field === 'clock');
  return asked ? sentences({ field: asked.field, message: asked.message }) : null;
}

/**
 * Says before a list what waits and why, and takes the answer; takes it away again once nothing is asked.
 * @param list what waits
 * @param question the question; empty when nothing is asked any more
 * @param isRight sends what waits, with the answer that the clock is right
 */
export function showQuestion(list: HTMLElement, question: string, isRight: () => void): void {
  const old = list.previousElementSibling;
  if (old instanceof HTMLElement && old.matches('.clock-asked')) {
    old.remove();
  }
  if (question === '') {
    return;
  }
  const shown = document.createElement('div');
  shown.className = 'clock-asked';
  shown.setAttribute('role', 'alert');
  const answer = document.createElement('button');
  answer.type = 'button';
  answer.textContent = 'The clock is right: save what waits';
  answer.addEventListener('click', () => {
    answer.disabled = true;
    isRight();
  });
  shown.append(
    line('strong', 'What was entered here is not saved yet; it waits on this tablet.'),
    line('span', question),
    line('span', 'If it is wrong, set it on that computer: what waits is then saved by itself.'),
    answer,
  );
  list.before(shown);
}

function line(name: string, words: string): HTMLElement {
  const made = document.createElement(name);
  made.textContent = words;
  return made;
}
