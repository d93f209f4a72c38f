import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { ListBox, ListBoxItem } from 'react-aria-components';
import type { Property } from '../../../core/book/index.ts';
import type { PassesOf } from '../../../core/passes/index.ts';
import { SHEETS, type Sheet, sheetsHtml } from '../../../core/reports/index.ts';
import { offerPrinting } from '../../commands/index.ts';
import {
  askHost,
  receiveFile,
  selectDay,
  selectProperty,
  selectSheet,
  useBook,
  useCurrentDay,
  useCurrentPlan,
  useFormat,
  useHost,
  useProperty,
  useSelection,
  useWithPasses,
} from '../../stores/index.ts';
import { Button, Choice, Empty, Field, Section, Tick, Workbench } from '../../ui/index.ts';
import { offerWindowPrinting } from './print-window.ts';
import { withFonts, withFontsInside } from './sheet-fonts.ts';
import { NO_PASSES, passOptions, useSheetPasses } from './sheet-passes.ts';
import { makeSheet } from './sheets.ts';

const NO_LAWNS: readonly Property[] = [];

/** What the crew takes along: sheets on screen as they will be on paper. */
export function PaperRoom() {
  const book = useBook((state) => state.open?.book ?? null);
  const known = useCurrentPlan();
  const day = useCurrentDay();
  const sheetId = useSelection((state) => state.sheetId);
  const selected = useProperty(useSelection((state) => state.propertyId));
  const kind = SHEETS.find((each) => each.id === sheetId) ?? SHEETS[0];
  const property = selected ?? book?.properties[0] ?? null;
  const [forCustomer, setForCustomer] = useState(false);
  const [passesOf, setPassesOf] = useState(NO_PASSES);
  const passes = useSheetPasses(property, passesOf);
  const find = useCallback(
    (passesOf: PassesOf) =>
      book === null || kind === undefined
        ? ''
        : makeSheet(kind, {
            book,
            plan: known?.plan ?? null,
            day,
            property,
            reader: forCustomer ? 'customer' : 'office',
            passes,
            passesOf,
          }),
    [book, known, day, property, kind, forCustomer, passes],
  );
  const question = JSON.stringify([kind?.id, property?.id, forCustomer]);
  const { found, fault } = useWithPasses(property, question, find);
  const sheet = found ?? fault?.detail ?? 'Reckoning the passes…';
  return (
    <Workbench
      room="paper"
      title="Paper"
      left={<SheetList chosen={kind?.id ?? ''} />}
      leftLabel="Sheets"
      right={
        <SheetFacts
          scope={kind?.scope ?? 'day'}
          property={property}
          forCustomer={forCustomer}
          onForCustomer={setForCustomer}
          passesOf={passesOf}
          onPassesOf={setPassesOf}
        />
      }
      rightLabel="About this sheet"
    >
      {typeof sheet === 'string' ? <Empty title="Nothing to print yet">{sheet}</Empty> : <Page sheet={sheet} />}
    </Workbench>
  );
}

function SheetList({ chosen }: { readonly chosen: string }) {
  return (
    <div className="list-panel">
      <div className="list-head">
        <h2>Sheets</h2>
      </div>
      <ListBox
        className="list"
        aria-label="Sheets"
        selectionMode="single"
        selectionBehavior="replace"
        disallowEmptySelection
        selectedKeys={[chosen]}
        onSelectionChange={(keys) => {
          const [key] = keys === 'all' ? [] : [...keys];
          if (key !== undefined) selectSheet(String(key));
        }}
      >
        {SHEETS.map((kind) => (
          <ListBoxItem key={kind.id} id={kind.id} className="list-item" textValue={kind.name}>
            <div className="shelf-row">
              <span className="row-title">{kind.name}</span>
              <span className="row-note">{kind.about}</span>
            </div>
          </ListBoxItem>
        ))}
      </ListBox>
    </div>
  );
}

/** Which day the sheets are of, and what to mind. */
type FactsProps = {
  readonly scope: 'day' | 'property';
  readonly property: Property | null;
  readonly forCustomer: boolean;
  readonly onForCustomer: (forCustomer: boolean) => void;
  /** Which head's passes are drawn on the plan. */
  readonly passesOf: string;
  readonly onPassesOf: (passesOf: string) => void;
};

function SheetFacts({ scope, property, forCustomer, onForCustomer, passesOf, onPassesOf }: FactsProps) {
  const book = useBook((state) => state.open?.book ?? null);
  const properties = useBook((state) => state.open?.book.properties ?? NO_LAWNS);
  const known = useCurrentPlan();
  const day = useCurrentDay();
  const words = useFormat();
  const days = known?.plan.days ?? [];
  return (
    <div className="inspector">
      {scope === 'property' && property !== null && (
        <Section title="Lawn">
          <Choice
            label="Lawn"
            value={property.id}
            options={properties.map(({ id, name }) => ({ value: id, words: name }))}
            onChoose={selectProperty}
          />
          <Tick label="customer's copy: no machines, costs or margin" checked={forCustomer} onChange={onForCustomer} />
          {book !== null && (
            <Field label="Plan shows">
              <Choice label="Passes on the plan" value={passesOf} options={passOptions(book)} onChoose={onPassesOf} />
            </Field>
          )}
        </Section>
      )}
      {scope === 'day' && day !== null && (
        <Section title="Day">
          <Choice
            label="Day and rig"
            value={`${day.date} ${day.rigId}`}
            options={days.map((each) => ({
              value: `${each.date} ${each.rigId}`,
              words: `${words.date(each.date)}, ${each.rigName}`,
            }))}
            onChoose={(key) => {
              const found = days.find((each) => `${each.date} ${each.rigId}` === key);
              if (found !== undefined) selectDay(found.date, found.rigId);
            }}
          />
        </Section>
      )}
      <Section title="Mind">
        <p className="small">
          The label of every product stands above these sheets. They are planned figures: what was really put out
          belongs in your own records, as your state asks for them.
        </p>
      </Section>
    </div>
  );
}

/** A sheet in a frame without scripts, printed from there or as a PDF by the host. */
function Page({ sheet }: { readonly sheet: Sheet }) {
  const frame = useRef<HTMLIFrameElement>(null);
  const html = useMemo(() => sheetsHtml([sheet]), [sheet]);
  const shown = useMemo(() => withFonts(html), [html]);
  const makesPdf = useHost((state) => state.info?.makesPdf ?? false);
  const print = useCallback(() => frame.current?.contentWindow?.print(), []);
  useEffect(() => {
    offerPrinting(print);
    return () => offerPrinting(null);
  }, [print]);
  useEffect(() => offerWindowPrinting(html), [html]);
  return (
    <div className="paper-room">
      <div className="paper-tools">
        <h2>{sheet.title}</h2>
        <Button look="main" onPress={print}>
          Print…
        </Button>
        <Button
          whyNot={makesPdf ? null : 'No Chromium was found to make a PDF; use Print'}
          onPress={() => savePdf(sheet, html).catch(() => undefined)}
        >
          Save as PDF
        </Button>
      </div>
      <iframe
        ref={frame}
        className="paper-page"
        title={sheet.title}
        sandbox="allow-same-origin allow-modals"
        srcDoc={shown}
      />
    </div>
  );
}

async function savePdf(sheet: Sheet, html: string): Promise<void> {
  const name = `${sheet.title} ${sheet.subtitle}`.replace(/[^\w .-]+/g, ' ').trim();
  const whole = await withFontsInside(html);
  receiveFile(await askHost('print.pdf', { html: whole, suggestedName: `${name}.pdf`.slice(-200) }));
}
