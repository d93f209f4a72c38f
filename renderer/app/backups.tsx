import { useState } from 'react';
import type { Backup } from '../../core/contract/index.ts';
import { counted } from '../format/index.ts';
import { restoreBackup, useBackups } from '../stores/index.ts';
import { Button } from '../ui/index.ts';

/** The copies that the program took of a book, newest first, each to be put in the book's place after a second press. */
export function BackupList() {
  const { backups, because } = useBackups();
  const [asked, setAsked] = useState<string | null>(null);
  return (
    <>
      {because !== null && (
        <p role="alert">
          <b>{because.detail}</b> The newest backup below brings the book back as it was then. The damaged file is kept
          beside it under another name.
        </p>
      )}
      <p className="quiet">
        While a book is edited the program copies it every quarter of an hour and when it is closed. It keeps three
        copies of today, one of each day before, ten in all, on this machine: write a copy to another disk as well.
      </p>
      {backups.length === 0 && <p>There is no backup of this book yet.</p>}
      <ul className="start-list">
        {backups.map((backup) => (
          <li key={backup.backupId} className="backup-row">
            <span>
              <b>{new Date(backup.takenAt).toLocaleString()}</b>
              <span className="quiet small">
                {' '}
                {counted(backup.properties, 'lawn')}, {counted(backup.revision, 'edit')}
              </span>
            </span>
            {asked === backup.backupId ? (
              <Confirm backup={backup} onGiveUp={() => setAsked(null)} />
            ) : (
              <Button
                label={`Restore ${new Date(backup.takenAt).toLocaleString()}`}
                onPress={() => setAsked(backup.backupId)}
              >
                Restore…
              </Button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

function Confirm({ backup, onGiveUp }: { readonly backup: Backup; readonly onGiveUp: () => void }) {
  const { because } = useBackups();
  const [busy, setBusy] = useState(false);
  return (
    <span className="backup-confirm">
      <span className="small">
        {because === null ? 'The book as it is now becomes one more backup.' : 'The damaged file is set aside.'}
      </span>
      <Button
        look="main"
        whyNot={busy ? 'It is being restored' : null}
        onPress={() => {
          setBusy(true);
          restoreBackup(backup)
            .catch(() => undefined)
            .finally(() => setBusy(false));
        }}
      >
        Put it in place
      </Button>
      <Button look="plain" onPress={onGiveUp}>
        Keep the book
      </Button>
    </span>
  );
}
