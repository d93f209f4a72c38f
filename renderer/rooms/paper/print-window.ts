/**
 * Lets the browser's own Print print a sheet and nothing of the program. A frame is cut off at the end of a page and cannot be
 * broken between lines, so the sheet is laid into the window itself while it prints, with its own style sheet around it.
 *
 * @param html the sheet as a whole page, without scripts
 * @returns takes it back
 */
export function offerWindowPrinting(html: string): () => void {
  let shown: HTMLElement | null = null;
  const hide = () => {
    shown?.remove();
    shown = null;
  };
  const show = () => {
    hide();
    shown = printedSheet(html);
    document.body.append(shown);
  };
  window.addEventListener('beforeprint', show);
  window.addEventListener('afterprint', hide);
  return () => {
    window.removeEventListener('beforeprint', show);
    window.removeEventListener('afterprint', hide);
    hide();
  };
}

/** The page inside a shadow tree: its rules for "body" meet its own body there, and none of them the program. */
function printedSheet(html: string): HTMLElement {
  const sheet = new DOMParser().parseFromString(html, 'text/html');
  const host = document.createElement('div');
  host.className = 'printed-sheet';
  host.attachShadow({ mode: 'open' }).append(...sheet.querySelectorAll('style'), sheet.body);
  return host;
}
