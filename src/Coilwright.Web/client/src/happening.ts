/** At the winder: a letter after the counter's figures says what happened, so that a break is logged without a mouse. */
export function happeningKeys(form: HTMLFormElement): void {
  document.addEventListener('keydown', event => {
    const target = event.target;
    const typing = target instanceof HTMLInputElement && target.name !== 'counter';
    if (event.ctrlKey || event.altKey || event.metaKey || typing || target instanceof HTMLTextAreaElement) {
      return;
    }
    const button = form.querySelector<HTMLButtonElement>(`button[data-key="${CSS.escape(event.key.toLowerCase())}"]`);
    if (!button) {
      return;
    }
    event.preventDefault();
    const counter = form.querySelector<HTMLInputElement>('input[name=counter]');
    if (counter && counter.value.trim() === '' && button.value !== 'Resumed') {
      counter.focus();
      return;
    }
    button.click();
  });
}
