import { useEffect, useState } from 'react';
import * as v from 'valibot';
import { NOTICES_FILE, type Notices, noticesSchema } from '../../core/contract/index.ts';
import { copyDiagnostics, useHost } from '../stores/index.ts';
import { appWords } from '../texts/app/index.ts';
import { Button } from '../ui/index.ts';

/** What the program is, its cautions, its version, and under which licences it and what comes with it are passed on. */
export function About() {
  const info = useHost((state) => state.info);
  return (
    <>
      <p>{appWords.overlays.what}</p>
      <p className="quiet">{appWords.overlays.caution}</p>
      {info !== null && (
        <p className="quiet small">
          {appWords.overlays.versions(
            info.version,
            info.host === 'window' ? appWords.overlays.ownWindow : appWords.overlays.inABrowser,
            info.platform,
            info.sqliteVersion,
          )}
        </p>
      )}
      <Button onPress={() => copyDiagnostics().catch(() => undefined)}>{appWords.overlays.copyDiagnostics}</Button>
      <p className="quiet small">{appWords.overlays.diagnosticsNote}</p>
      <Licences />
    </>
  );
}

type Known = Notices | 'reading' | 'missing';

/** Read when the box is opened: the words of all licences are as long as a book. */
function Licences() {
  const [notices, setNotices] = useState<Known>('reading');
  useEffect(() => {
    let isShown = true;
    const show = (found: Known): void => {
      if (isShown) setNotices(found);
    };
    readNotices()
      .then(show)
      .catch(() => show('missing'));
    return () => {
      isShown = false;
    };
  }, []);
  if (notices === 'reading') return <p className="quiet">{appWords.about.reading}</p>;
  if (notices === 'missing') return <p className="quiet">{appWords.about.missing}</p>;
  return (
    <section className="licences">
      <h3>{appWords.about.licences}</h3>
      <Words title={appWords.about.own} text={notices.own} />
      <p className="quiet small">{appWords.about.comesWith(notices.packages.length)}</p>
      {notices.texts.map((text, index) => {
        const packages = notices.packages.filter((each) => each.text === index);
        const title = packages.map(({ name, version, licence }) => `${name} ${version} (${licence})`).join(', ');
        return <Words key={title} title={title} text={text} />;
      })}
    </section>
  );
}

function Words({ title, text }: { readonly title: string; readonly text: string }) {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details className="more" onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {isOpen && <pre className="licence-words">{text}</pre>}
    </details>
  );
}

async function readNotices(): Promise<Known> {
  const answer = await fetch(NOTICES_FILE);
  const read = v.safeParse(noticesSchema, await answer.json());
  return read.success ? read.output : 'missing';
}
