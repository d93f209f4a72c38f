import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { ListBox, ListBoxItem } from 'react-aria-components';
import type { PassesOf } from '../../../core/passes/index.ts';
import { SHEETS, type Sheet, sheetsHtml } from '../../../core/reports/index.ts';
import { CommandButton, useOffer } from '../../commands/index.ts';
import { NotYet } from '../../next/index.ts';
import {
  askHost,
  EXCHANGE_ID,
  receiveFile,
  selectSheet,
  useBook,
  useBookAsRead,
  useCurrentDay,
  useCurrentPlan,
  useCurrentRound,
  useHost,
  useProperty,
  useSelection,
  useWithPasses,
} from '../../stores/index.ts';
import { paperWords } from '../../texts/index.ts';
import { Empty, offerWindowPrinting, Workbench } from '../../ui/index.ts';
import { useDayPasses } from './day-passes.ts';
import { useDayPictures } from './day-pictures.ts';
import { useDayWays } from './day-ways.ts';
import { ExchangeFacts, ExchangePage } from './exchange-page.tsx';
import { SheetFacts } from './sheet-facts.tsx';
import { withFonts, withFontsInside } from './sheet-fonts.ts';
import { NO_PASSES, useSheetPasses } from './sheet-passes.ts';
import { useFleetPlans, useSheetYear } from './sheet-sources.ts';
import { makeSheet, type NoSheet } from './sheets.ts';

/** What the crew takes along: sheets on screen as they will be on paper; and files for other programs. */
export function PaperRoom() {
  const isExchange = useSelection((state) => state.sheetId === EXCHANGE_ID);
  return isExchange ? <ExchangeRoom /> : <SheetRoom />;
}

function ExchangeRoom() {
  return (
    <Workbench
      room="paper"
      title={paperWords.room.paper}
      left={<SheetList chosen={EXCHANGE_ID} />}
      leftLabel={paperWords.room.sheets}
      right={<ExchangeFacts />}
      rightLabel={paperWords.room.filesFacts}
    >
      <ExchangePage />
    </Workbench>
  );
}

function SheetRoom() {
  const book = useBook((state) => state.open?.book ?? null);
  const known = useCurrentPlan();
  const day = useCurrentDay();
  const round = useCurrentRound();
  const sheetId = useSelection((state) => state.sheetId);
  const selected = useProperty(useSelection((state) => state.propertyId));
  const kind = SHEETS.find((each) => each.id === sheetId) ?? SHEETS[0];
  const asRead = useBookAsRead(book);
  const told = kind?.holdsRecords === true ? book : asRead;
  const property = selected ?? book?.properties[0] ?? null;
  const [year, setYear] = useState<string | null>(null);
  const { ledger, years, shownYear } = useSheetYear(kind?.scope === 'year', year);
  const fleetPlans = useFleetPlans();
  const [forCustomer, setForCustomer] = useState(false);
  const [passesOf, setPassesOf] = useState(NO_PASSES);
  const passes = useSheetPasses(property, passesOf);
  const drawsDay = kind?.scope === 'day' && kind.drawsPasses === true;
  const laid = useDayPasses(drawsDay ? day : null);
  const pictures = useDayPictures(drawsDay);
  const ways = useDayWays(kind?.scope === 'day' ? day : null);
  const find = useCallback(
    (passesOf: PassesOf) =>
      told === null || kind === undefined
        ? NO_SHEET
        : makeSheet(kind, {
            book: told,
            plan: known?.plan ?? null,
            round,
            day,
            property,
            ledger,
            fleetPlans,
            reader: forCustomer ? 'customer' : 'office',
            passes,
            passesOf,
            dayPasses: laid.passes,
            pictures,
            ways,
          }),
    [told, known, round, day, property, kind, ledger, fleetPlans, forCustomer, passes, laid, pictures, ways],
  );
  const question = JSON.stringify([kind?.id, property?.id, forCustomer]);
  const { found, fault } = useWithPasses(property, question, find);
  const isLaying = laid.done < laid.total;
  const sheet = isLaying
    ? waiting(paperWords.room.layingPasses(laid.done, laid.total))
    : (found ?? waiting(fault?.detail ?? paperWords.room.reckoningPasses));
  return (
    <Workbench
      room="paper"
      title={paperWords.room.paper}
      left={<SheetList chosen={kind?.id ?? ''} />}
      leftLabel={paperWords.room.sheets}
      right={
        <SheetFacts
          kindId={kind?.id ?? ''}
          scope={kind?.scope ?? null}
          property={property}
          forCustomer={forCustomer}
          onForCustomer={setForCustomer}
          year={shownYear}
          years={years}
          onYear={setYear}
          passesOf={passesOf}
          onPassesOf={setPassesOf}
        />
      }
      rightLabel={paperWords.room.sheetFacts}
    >
      <SheetPage sheet={sheet} />
    </Workbench>
  );
}

const waiting = (words: string): NoSheet => ({ kind: 'none', words, needs: null });
const NO_SHEET = waiting('');

function SheetPage({ sheet }: { readonly sheet: Sheet | NoSheet }) {
  if (!('words' in sheet)) return <Page sheet={sheet} />;
  const { needs, words } = sheet;
  if (needs === null) return <Empty title={paperWords.room.beingMade}>{words}</Empty>;
  return (
    <NotYet title={paperWords.room.nothingToPrint} needs={needs}>
      {words}
    </NotYet>
  );
}

function SheetList({ chosen }: { readonly chosen: string }) {
  return (
    <div className="list-panel">
      <div className="list-head">
        <h2>{paperWords.room.sheets}</h2>
      </div>
      <ListBox
        className="list"
        aria-label={paperWords.room.sheets}
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
            {/* biome-ignore lint/a11y/noStaticElementInteractions: the list around it takes the keys. */}
            <div className="shelf-row" data-subject="sheet" onContextMenu={() => selectSheet(kind.id)}>
              <span className="row-title">{kind.name}</span>
              <span className="row-note">{kind.about}</span>
            </div>
          </ListBoxItem>
        ))}
        <ListBoxItem id={EXCHANGE_ID} className="list-item" textValue={paperWords.room.files}>
          <div className="shelf-row">
            <span className="row-title">{paperWords.room.files}</span>
            <span className="row-note">{paperWords.room.filesNote}</span>
          </div>
        </ListBoxItem>
      </ListBox>
    </div>
  );
}

/** A sheet in a frame without scripts, printed from there or as a PDF by the host. */
function Page({ sheet }: { readonly sheet: Sheet }) {
  const frame = useRef<HTMLIFrameElement>(null);
  const paper = useHost((state) => state.settings.paper);
  const print = useHost((state) => state.settings.print);
  const html = useMemo(() => sheetsHtml([sheet], { paper, print }), [sheet, paper, print]);
  const shown = useMemo(() => withFonts(html), [html]);
  const makesPdf = useHost((state) => state.info?.makesPdf ?? false);
  const printFrame = () => frame.current?.contentWindow?.print();
  useOffer('paper.print', { whyNot: null, run: printFrame });
  useOffer('paper.pdf', {
    whyNot: makesPdf ? null : paperWords.room.noPdf,
    run: () => void savePdf(sheet, html).catch(() => undefined),
  });
  useEffect(() => offerWindowPrinting(html), [html]);
  return (
    <div className="paper-room">
      <div className="paper-tools">
        <h2>{sheet.title}</h2>
        <CommandButton id="paper.print" look="main">
          {paperWords.room.print}
        </CommandButton>
        <CommandButton id="paper.pdf">{paperWords.room.saveAsPdf}</CommandButton>
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
