import { type KeyboardEvent, type ReactNode, useId, useLayoutEffect, useRef } from 'react';
import { useRowsInView } from './use-rows-in-view.ts';
import { rowForKey, rowForText, scrollToShow } from './virtual-rows.ts';

type VirtualListProps<Item extends { readonly id: string; readonly name: string }> = {
  readonly label: string;
  readonly items: readonly Item[];
  readonly rowPx: number;
  readonly selectedId: string | null;
  readonly onSelect: (id: string) => void;
  /** Enter, or a double click. */
  readonly onOpen: (id: string) => void;
  /** Keys that mean something else to the window around the list, and find no row unless a word is being typed. Absent: none. */
  readonly isTaken?: (key: string) => boolean;
  /** What a row is, for a menu of its own; absent: it has none. */
  readonly subject?: string;
  readonly children: (item: Item) => ReactNode;
};

/** How long a pause ends the word that is typed to find a row, ms. */
const TYPING_PAUSE_MS = 700;

/**
 * A list of thousands of rows of one height, of which only those in view are drawn (the listbox pattern of the WAI-ARIA Authoring
 * Practices with aria-activedescendant). Arrow keys, Page, Home and End move; typing finds a row by the beginning of its name, or of a word of it.
 */
export function VirtualList<Item extends { readonly id: string; readonly name: string }>(
  props: VirtualListProps<Item>,
) {
  const { label, items, rowPx, selectedId, onSelect, onOpen, isTaken, subject, children } = props;
  const { box, onScroll, heightPx, range } = useRowsInView<HTMLDivElement>(items.length, rowPx);
  const typed = useRef({ text: '', at: 0 });
  const idStem = useId();
  const selected = items.findIndex((item) => item.id === selectedId);

  useLayoutEffect(() => {
    const element = box.current;
    if (element === null || selected < 0) return;
    element.scrollTop = scrollToShow(selected, rowPx, element.scrollTop, element.clientHeight);
  }, [box, selected, rowPx]);

  const choose = (index: number) => {
    const item = items[index];
    if (item !== undefined) onSelect(item.id);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Enter' && selectedId !== null) {
      event.preventDefault();
      onOpen(selectedId);
      return;
    }
    const row = rowForKey(event.key, selected, items.length, Math.max(1, Math.floor(heightPx / rowPx) - 1));
    const found = row ?? (/^[\p{L}\p{N} ]$/u.test(event.key) ? rowTyped(event.key) : null);
    // What finds nothing is left to the keys of the window.
    if (found === null) return;
    event.preventDefault();
    event.stopPropagation();
    choose(found);
  };
  const rowTyped = (key: string): number | null => {
    const now = performance.now();
    const goesOn = typed.current.text !== '' && now - typed.current.at <= TYPING_PAUSE_MS;
    if (!goesOn && isTaken?.(key) === true) return null;
    const text = goesOn ? typed.current.text + key : key;
    const found = rowForText((index) => items[index]?.name ?? '', items.length, selected, text);
    typed.current = { text: found < 0 && !goesOn ? '' : text, at: now };
    if (found >= 0) return found;
    // A word that is typed on stays with the list even where no row has it.
    return goesOn ? selected : null;
  };

  const { first, end } = range;
  const drawn = Array.from({ length: end - first }, (_, offset) => first + offset);
  // The selected row is drawn even when it is scrolled away, so that the list can name it as its active one.
  if (selected >= 0 && (selected < first || selected >= end)) drawn.push(selected);
  return (
    <div
      ref={box}
      className="list"
      role="listbox"
      aria-label={label}
      tabIndex={0}
      aria-activedescendant={selected < 0 ? undefined : `${idStem}-${selected}`}
      onKeyDown={onKeyDown}
      onScroll={onScroll}
    >
      <div role="presentation" className="list-rows" style={{ height: items.length * rowPx }}>
        {drawn.map((index) => {
          const item = items[index];
          if (item === undefined) return null;
          return (
            // biome-ignore lint/a11y/useKeyWithClickEvents: the list around it takes the keys.
            // biome-ignore lint/a11y/useFocusableInteractive: the list around it holds the focus and names its active row.
            <div
              key={item.id}
              id={`${idStem}-${index}`}
              role="option"
              className="list-item"
              data-subject={subject}
              aria-selected={index === selected}
              aria-posinset={index + 1}
              aria-setsize={items.length}
              style={{ top: index * rowPx, height: rowPx }}
              onClick={() => choose(index)}
              onContextMenu={() => choose(index)}
              onDoubleClick={() => onOpen(item.id)}
            >
              {children(item)}
            </div>
          );
        })}
      </div>
    </div>
  );
}
