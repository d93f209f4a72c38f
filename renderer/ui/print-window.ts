/** What lies on top is printed: a page of keys over a sheet is the page of keys. */
const offers: string[] = [];

/**
 * Lets the browser's own Print print a sheet and nothing of the program. A frame is cut off at the end of a page and cannot be
 * broken between lines, so the sheet is laid into the window itself while it prints, with its own style sheet around it.
 *
 * @param html the sheet as a whole page, without scripts
 * @returns takes it back
 */
export function offerWindowPrinting(html: string): () => void {
  let shown: readonly HTMLElement[] = [];
  const hide = () => {
    for (const each of shown) each.remove();
    shown = [];
  };
  offers.push(html);
  const show = () => {
    hide();
    if (offers.at(-1) !== html) return;
    const { pages, host } = printedSheet(html);
    shown = [...pages, host];
    document.head.append(...pages);
    document.body.append(host);
  };
  window.addEventListener('beforeprint', show);
  window.addEventListener('afterprint', hide);
  return () => {
    window.removeEventListener('beforeprint', show);
    window.removeEventListener('afterprint', hide);
    offers.splice(offers.lastIndexOf(html), 1);
    hide();
  };
}

/**
 * The page inside a shadow tree: its rules for "body" meet its own body there, and none of them the program. Rules for the paper count
 * in the document alone.
 */
function printedSheet(html: string): { readonly pages: readonly HTMLElement[]; readonly host: HTMLElement } {
  const sheet = new DOMParser().parseFromString(html, 'text/html');
  const host = document.createElement('div');
  host.className = 'printed-sheet';
  const styles = [...sheet.querySelectorAll('style')];
  const pages = styles.filter((each) => each.classList.contains('pages'));
  host.attachShadow({ mode: 'open' }).append(...styles.filter((each) => !pages.includes(each)), sheet.body);
  return { pages, host };
}
