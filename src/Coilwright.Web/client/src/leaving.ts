const saysAfterMs = 300;

/**
 * A page that is long in coming says so where the person looks: on the page that is about to go. Files that are saved beside the page
 * leave it where it is.
 */
export function leaving(): void {
  let timer = 0;
  const stay = (): void => {
    window.clearTimeout(timer);
    document.querySelector('.leaving')?.remove();
  };
  const leave = (): void => {
    stay();
    timer = window.setTimeout(say, saysAfterMs);
  };
  document.addEventListener('click', event => {
    const link = event.target instanceof Element ? event.target.closest('a') : null;
    if (link && !event.defaultPrevented && leavesBy(link, event)) {
      leave();
    }
  });
  document.addEventListener('submit', event => {
    const form = event.target instanceof HTMLFormElement ? event.target : null;
    const sender = event.submitter instanceof HTMLElement ? event.submitter.getAttribute('formaction') : null;
    const address = new URL(sender ?? form?.getAttribute('action') ?? '', window.location.href);
    if (form && !event.defaultPrevented && isPage(address)) {
      leave();
    }
  });
  window.addEventListener('pageshow', stay);
  window.addEventListener('pagehide', stay);
}

function leavesBy(link: HTMLAnchorElement, event: MouseEvent): boolean {
  const elsewhere = event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0 || link.target === '_blank';
  const address = new URL(link.href, window.location.href);
  const within = address.hash !== '' && address.href.split('#')[0] === window.location.href.split('#')[0];
  return !elsewhere && !within && !link.hasAttribute('download') && isPage(address);
}

/** A file's name ends in its kind: .pdf, .csv, .svg. */
function isPage(address: URL): boolean {
  return !/\.[a-z0-9]{2,5}$/i.test(address.pathname);
}

function say(): void {
  const note = document.createElement('p');
  note.className = 'leaving';
  note.setAttribute('aria-live', 'polite');
  note.textContent = 'Working: the next page is on its way';
  document.body.append(note);
}
