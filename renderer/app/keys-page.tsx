import { useEffect, useMemo } from 'react';
import { sheetsHtml } from '../../core/reports/index.ts';
import { useHost } from '../stores/index.ts';
import { appWords } from '../texts/app/index.ts';
import { Button, offerWindowPrinting } from '../ui/index.ts';
import { keyLists, keysSheet } from './key-lists.ts';

/** Every key and what it does; printed as a sheet, by its button or by the window's own Print. */
export function KeysPage() {
  const paper = useHost((state) => state.settings.paper);
  const print = useHost((state) => state.settings.print);
  const lists = useMemo(keyLists, []);
  useEffect(() => offerWindowPrinting(sheetsHtml([keysSheet(lists)], { paper, print })), [lists, paper, print]);
  return (
    <>
      <p>
        <Button onPress={() => window.print()}>{appWords.keys.print}</Button>
      </p>
      <div className="keys-columns">
        {lists.map(({ title, lines }) => (
          <section key={title}>
            <h3>{title}</h3>
            <dl className="keys-list">
              {lines.map(({ what, keys }) => (
                <div key={what}>
                  <dt>{what}</dt>
                  <dd>
                    {keys.map((key) => (
                      <kbd key={key} className="key">
                        {key}
                      </kbd>
                    ))}
                  </dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
    </>
  );
}
