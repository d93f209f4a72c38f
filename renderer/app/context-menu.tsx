import { useEffect, useRef, useState } from 'react';
import { Popover } from 'react-aria-components';
import { CommandMenu, SUBJECT_MENUS, type Subject, subjectAt } from '../commands/index.ts';
import { appWords } from '../texts/app/index.ts';

type Opened = { readonly subject: Subject; readonly x: number; readonly y: number };

/** The menu of the thing under the pointer, or of the one that has the focus: its commands, as everywhere else. */
export function ContextMenu() {
  const anchor = useRef<HTMLSpanElement>(null);
  const [opened, setOpened] = useState<Opened | null>(null);
  useEffect(() => {
    const onContextMenu = (event: MouseEvent) => {
      const found = subjectAt(event.target);
      if (found === null) return;
      event.preventDefault();
      const isByPointer = event.button === 2;
      const box = found.element.getBoundingClientRect();
      const at = isByPointer ? { x: event.clientX, y: event.clientY } : { x: box.left + 12, y: box.bottom };
      setOpened({ subject: found.subject, ...at });
    };
    document.addEventListener('contextmenu', onContextMenu);
    return () => document.removeEventListener('contextmenu', onContextMenu);
  }, []);
  if (opened === null) return null;
  const close = () => setOpened(null);
  return (
    <>
      <span ref={anchor} className="context-anchor" style={{ left: opened.x, top: opened.y }} />
      <Popover
        className="popover menu-popover"
        aria-label={appWords.contextMenu[opened.subject]}
        triggerRef={anchor}
        isOpen
        onOpenChange={(isOpen) => !isOpen && close()}
        placement="bottom start"
        offset={0}
      >
        <CommandMenu
          label={appWords.contextMenu[opened.subject]}
          sections={SUBJECT_MENUS[opened.subject]}
          onDone={close}
        />
      </Popover>
    </>
  );
}
