import { type Book, SITES } from '../../../../core/book/index.ts';
import { type Site, siteWords } from '../../../../core/round/timing/index.ts';
import { edit } from '../../../stores/index.ts';
import { whenWords } from '../../../texts/round/index.ts';
import { Field, QuantityInput, Section } from '../../../ui/index.ts';

/** What warmer and cooler sites add to the station's temperatures. */
export function SiteOffsets({ book }: { readonly book: Book }) {
  const set = (site: Site, value: number | null) => {
    const { [site]: _, ...rest } = book.siteOffsets ?? {};
    const siteOffsets = value === null ? rest : { ...rest, [site]: value };
    return edit({ kind: 'set', changes: { siteOffsets }, label: whenWords.offsets.changeOffsetOf(siteWords([site])) });
  };
  return (
    <Section title={whenWords.offsets.warmerCoolerSites}>
      <p className="quiet small">{whenWords.offsets.about}</p>
      <div className="when-form">
        {SITES.map((site) => (
          <Field key={site} label={siteWords([site])}>
            <QuantityInput
              kind="temperature-difference"
              label={whenWords.offsets.addedAt(siteWords([site]))}
              value={book.siteOffsets?.[site] ?? null}
              optional
              onCommit={(value) => set(site, value)}
            />
          </Field>
        ))}
      </div>
    </Section>
  );
}
