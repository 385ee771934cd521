import { contentsOf } from './live';

const restMs = 700;

/** Asks for what takes longer than a slider may wait: once the form has rested, and given up as soon as it moves again. */
export function afterwards(form: HTMLFormElement, panel: HTMLElement): void {
  let timer = 0;
  let underWay = new AbortController();
  const stale = (is: boolean): void => {
    panel.classList.toggle('stale', is);
    panel.setAttribute('aria-busy', String(is));
  };
  const ask = (): void => {
    underWay = new AbortController();
    fetch(panel.dataset.after ?? '', { method: 'POST', body: contentsOf(form), signal: underWay.signal })
      .then(answer => (answer.ok ? answer.text() : Promise.reject(new Error(`no answer: ${answer.status}`))))
      .then(html => {
        panel.innerHTML = html;
        stale(false);
      })
      .catch(() => undefined); // given up or not reached: what stands there stays dimmed
  };
  const moved = (): void => {
    window.clearTimeout(timer);
    underWay.abort();
    if (!panel.isConnected) {
      form.removeEventListener('input', moved); // another view stands here now
      return;
    }
    stale(true);
    timer = window.setTimeout(ask, restMs);
  };
  form.addEventListener('input', moved);
  moved();
}
