import { useEffect } from 'react';

/** Parts of the window that the focus may go back to. */
const LANDMARKS = 'main, .panel, nav, header, [role="dialog"], section:not(.notice)';
/** After something is gone, whatever else wants the focus, such as a closing dialog, has so long to take it, ms. */
const WAIT_MS = 80;
/** A focus that is lost so soon after the pointer went down is lost by that, ms. */
const OF_A_PRESS_MS = 50;
/** Places that had the focus before, of which the last one that is still there is taken. */
const MOST_KNOWN = 12;

type Place = { readonly element: HTMLElement; readonly around: readonly HTMLElement[] };

/**
 * Keeps the focus in the window when what had it is taken away: a removed record, a closed notice, another room. Without that it falls
 * to the page itself, and who works from the keyboard begins again at the menu. It goes to the nearest part of the window that is still
 * there, else to where it was before, else to the middle of the room.
 */
export function useKeptFocus(): void {
  useEffect(() => {
    let places: readonly Place[] = [];
    let timer = 0;
    const onFocusIn = ({ target }: FocusEvent) => {
      if (!(target instanceof HTMLElement)) return;
      places = [...places.filter((each) => each.element !== target), { element: target, around: landmarksOf(target) }];
      places = places.slice(-MOST_KNOWN);
    };
    let pressedAt = Number.NEGATIVE_INFINITY;
    const onPointerDown = ({ timeStamp }: PointerEvent) => {
      pressedAt = timeStamp;
    };
    // Who clicks beside everything gives the focus away, and it stays away. A dialog that closes gives it away as well, but for a moment.
    const onFocusOut = ({ target, relatedTarget, timeStamp }: FocusEvent) => {
      if (relatedTarget !== null || timeStamp - pressedAt > OF_A_PRESS_MS) return;
      queueMicrotask(() => {
        if (target instanceof HTMLElement && target.isConnected && document.hasFocus()) places = [];
      });
    };
    const observer = new MutationObserver(() => {
      const last = places.at(-1);
      if (last === undefined || last.element.isConnected || timer !== 0) return;
      timer = window.setTimeout(() => {
        timer = 0;
        if (hasNoFocus()) takeUp(places);
      }, WAIT_MS);
    });
    document.addEventListener('pointerdown', onPointerDown, true);
    document.addEventListener('focusin', onFocusIn);
    document.addEventListener('focusout', onFocusOut);
    observer.observe(document.body, { childList: true, subtree: true });
    return () => {
      window.clearTimeout(timer);
      observer.disconnect();
      document.removeEventListener('pointerdown', onPointerDown, true);
      document.removeEventListener('focusin', onFocusIn);
      document.removeEventListener('focusout', onFocusOut);
    };
  }, []);
}

function hasNoFocus(): boolean {
  return document.activeElement === null || document.activeElement === document.body;
}

function landmarksOf(element: HTMLElement): readonly HTMLElement[] {
  const found: HTMLElement[] = [];
  for (let each = element.parentElement; each !== null; each = each.parentElement)
    if (each.matches(LANDMARKS)) found.push(each);
  return found;
}

function takeUp(places: readonly Place[]): void {
  const around = places.at(-1)?.around.find(isThere);
  const before = places.findLast(({ element }) => isThere(element))?.element;
  const goal = around ?? before ?? document.querySelector<HTMLElement>('main');
  if (goal === null || goal === undefined) return;
  // A part of the window takes the focus without being a stop of the Tab key.
  if (goal.tabIndex < 0 && !goal.hasAttribute('tabindex')) goal.tabIndex = -1;
  goal.focus({ preventScroll: true });
}

function isThere(element: HTMLElement): boolean {
  return element.isConnected && element.checkVisibility();
}
