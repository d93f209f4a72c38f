import { X } from 'lucide-react';
import { useEffect, useState } from 'react';
import { closeNotice, type Notice, undo, useHost, useNotices } from '../stores/index.ts';
import { appWords } from '../texts/app/index.ts';
import { commonWords, KEPT } from '../texts/index.ts';
import { Button } from '../ui/index.ts';

const NEWS_MS = 6000;

/**
 * What the program says by itself. A dialog hides the rest of the window from screen readers and from the focus; the mark on this part
 * keeps it out of that, so that what happens behind a dialog is heard and its notice can be closed.
 */
export function Announcements() {
  return (
    <div data-react-aria-top-layer="true">
      <NoticeBar />
      <SpokenStatus />
    </div>
  );
}

/** One notice at the foot of the window. Errors stay until closed. */
function NoticeBar() {
  const notice = useNotices((state) => state.notice);
  return notice === null ? null : <ShownNotice notice={notice} />;
}

/** News goes by itself unless the user keeps it, but not from under the pointer or the focus: who reads slowly or means to undo has the time for it. */
function ShownNotice({ notice }: { readonly notice: Notice }) {
  const serial = useNotices((state) => state.serial);
  const keepsNews = useHost((state) => state.settings.keepNews);
  const [isPointedAt, setPointedAt] = useState(false);
  const [hasFocus, setFocus] = useState(false);
  const isHeld = isPointedAt || hasFocus;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the serial starts the time again for the same words.
  useEffect(() => {
    if (notice.kind !== 'news' || isHeld || keepsNews) return;
    const timer = setTimeout(closeNotice, NEWS_MS);
    return () => clearTimeout(timer);
  }, [notice, serial, isHeld, keepsNews]);
  return (
    <section
      className={`notice notice-${notice.kind}`}
      aria-label={appWords.notices.label}
      onPointerEnter={() => setPointedAt(true)}
      onPointerLeave={() => setPointedAt(false)}
      onFocus={() => setFocus(true)}
      onBlur={() => setFocus(false)}
    >
      {notice.kind === 'error' ? (
        <div role="alert">
          <p className="strong">{notice.error.detail}</p>
          <p>{KEPT[notice.error.code]}</p>
          <p className="notice-hint">
            {notice.error.hint} <span className="quiet">({notice.error.where})</span>
          </p>
        </div>
      ) : (
        <p>{notice.text}</p>
      )}
      {notice.kind === 'news' && notice.undoable && (
        <Button
          look="plain"
          onPress={() => {
            closeNotice();
            undo();
          }}
        >
          {commonWords.undo}
        </Button>
      )}
      <Button look="quiet" label={appWords.notices.close} onPress={closeNotice}>
        <X size={15} aria-hidden="true" />
      </Button>
    </section>
  );
}

/** What screen readers are told, without moving the focus. */
function SpokenStatus() {
  const spoken = useNotices((state) => state.spoken);
  const serial = useNotices((state) => state.spokenSerial);
  return (
    <div className="only-spoken" role="status" aria-live="polite">
      <span key={serial}>{spoken}</span>
    </div>
  );
}
