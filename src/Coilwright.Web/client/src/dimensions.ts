import { openAbove } from './drafts';

/**
 * A field in focus lights its dimension in the drawing, and a dimension touched moves the focus to its field.
 * @returns lights it again, after the drawing was made anew
 */
export function dimensions(form: HTMLFormElement): () => void {
  const light = (): void => {
    const field = document.activeElement instanceof HTMLInputElement ? measured(document.activeElement) : '';
    for (const dimension of form.querySelectorAll<SVGElement>('[data-dimension]')) {
      dimension.classList.toggle('lit', field !== '' && dimension.dataset.dimension === field);
    }
  };
  form.addEventListener('focusin', light);
  form.addEventListener('focusout', light);
  form.addEventListener('click', event => {
    const dimension = event.target instanceof Element ? event.target.closest<SVGElement>('[data-dimension]') : null;
    const field = document.getElementById(dimension?.dataset.dimension ?? '');
    if (field) {
      event.preventDefault();
      openAbove(field);
      field.focus();
    }
  });
  return light;
}

/** What a text field, or the slider under it, measures. */
function measured(field: HTMLInputElement): string {
  return field.dataset.drives ?? field.name;
}
