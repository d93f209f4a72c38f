import { useState } from 'react';
import type { Backup } from '../../core/contract/index.ts';
import { restoreBackup, useBackups, useFormat } from '../stores/index.ts';
import { appWords } from '../texts/app/index.ts';
import { commonWords } from '../texts/index.ts';
import { Button } from '../ui/index.ts';

/** The copies that the program took of a book, newest first, each to be put in the book's place after a second press. */
export function BackupList() {
  const { backups, because } = useBackups();
  const words = useFormat();
  const [asked, setAsked] = useState<string | null>(null);
  return (
    <>
      {because !== null && (
        <p role="alert">
          <b>{because.detail}</b> {appWords.backups.damagedNote}
        </p>
      )}
      <p className="quiet">{appWords.backups.about}</p>
      {backups.length === 0 && <p>{appWords.backups.noneYet}</p>}
      <ul className="start-list">
        {backups.map((backup) => (
          <li key={backup.backupId} className="backup-row">
            <span>
              <b>{words.moment(backup.takenAt)}</b>
              <span className="quiet small">
                {' '}
                {commonWords.lawns(backup.properties)}, {appWords.backups.edits(backup.revision)}
              </span>
            </span>
            {asked === backup.backupId ? (
              <Confirm backup={backup} onGiveUp={() => setAsked(null)} />
            ) : (
              <Button
                label={appWords.backups.restoreOf(words.moment(backup.takenAt))}
                onPress={() => setAsked(backup.backupId)}
              >
                {appWords.backups.restore}
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
      <span className="small">{because === null ? appWords.backups.becomesBackup : appWords.backups.setAside}</span>
      <Button
        look="main"
        whyNot={busy ? appWords.backups.beingRestored : null}
        onPress={() => {
          setBusy(true);
          restoreBackup(backup)
            .catch(() => undefined)
            .finally(() => setBusy(false));
        }}
      >
        {appWords.backups.putInPlace}
      </Button>
      <Button look="plain" onPress={onGiveUp}>
        {appWords.backups.keepTheBook}
      </Button>
    </span>
  );
}
