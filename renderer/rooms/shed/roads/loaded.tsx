import type { BookRoads } from '../../../../core/book/index.ts';
import { offRoadWords } from '../../../../core/travel/index.ts';
import { CommandButton } from '../../../commands/index.ts';
import { formatNumber } from '../../../format/index.ts';
import { cancelRoadImport, changeRoads, selectProperty, useRoads } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { roadsWords } from '../../../texts/shed/index.ts';
import { Button, Section, Tick } from '../../../ui/index.ts';
import { pairsWords } from './words.ts';

/** What roads lie beside the book, and what they are good for. */
export function LoadedRoads({ roads }: { readonly roads: BookRoads | undefined }) {
  const status = useRoads((state) => state.status);
  const importing = useRoads((state) => state.importing);
  const hasRoads = status?.roads != null || roads?.extract !== undefined;
  return (
    <Section
      title={roadsWords.loaded.roadsBesideBook}
      aside={
        <CommandButton id="shed.roads-import" look={hasRoads ? 'plain' : 'main'}>
          {hasRoads ? roadsWords.loaded.importAnother : roadsWords.loaded.importFirst}
        </CommandButton>
      }
    >
      {importing !== null && <Importing />}
      {status === null ? <p className="quiet small">{roadsWords.loaded.looking}</p> : <About />}
      {status !== null && <p>{pairsWords(status)}</p>}
      {status?.trouble != null && <p className="fault">{status.trouble}</p>}
      {hasRoads && (
        <div className="road-tools">
          <Tick
            label={roadsWords.loaded.driveByThese}
            checked={roads?.use ?? true}
            onChange={(use) => {
              changeRoads({ use }, use ? roadsWords.loaded.useRoads : roadsWords.loaded.useEstimate);
            }}
          />
          <CommandButton id="shed.roads-forget" look="quiet">
            {roadsWords.loaded.remove}
          </CommandButton>
        </div>
      )}
      <OffRoad />
    </Section>
  );
}

function Importing() {
  const importing = useRoads((state) => state.importing);
  if (importing === null) return null;
  const { fileName, progress } = importing;
  const words = roadsWords.loaded.reading(progress?.step ?? 'roads', fileName);
  return (
    <div className="road-import" role="status">
      <span>{words}</span>
      {progress === null || progress.total === 0 ? (
        <progress aria-label={words} />
      ) : (
        <progress aria-label={words} value={progress.done} max={progress.total} />
      )}
      <Button onPress={cancelRoadImport}>{commonWords.cancel}</Button>
    </div>
  );
}

function About() {
  const status = useRoads((state) => state.status);
  const about = status?.roads?.about;
  if (status?.fault != null) {
    const { where, detail, hint } = status.fault;
    return <p className="fault">{`${where}: ${detail} ${hint}`}</p>;
  }
  if (about === undefined) {
    return <p className="quiet">{roadsWords.loaded.noneYet}</p>;
  }
  const [west = '', south = '', east = '', north = ''] = about.bounds.map((each) => formatNumber(each, 3));
  const { counts } = about;
  const facts: readonly (readonly [string, string])[] = [
    [roadsWords.loaded.roads, roadsWords.loaded.linesOfMap(formatNumber(counts.roads), formatNumber(counts.ways))],
    [roadsWords.loaded.turnsForbidden, formatNumber(counts.restrictionsUsed)],
    [roadsWords.loaded.from, roadsWords.loaded.bounds(south, west, north, east)],
    [roadsWords.loaded.asOf, about.dataOf === '' ? roadsWords.loaded.notTold : about.dataOf.slice(0, 10)],
    [roadsWords.loaded.whose, [about.attribution, about.licence].filter((each) => each !== '').join(', ')],
  ];
  return (
    <dl className="road-facts">
      {facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

const MOST_LISTED = 50;

/** Places that no road reaches: listed, not guessed. */
function OffRoad() {
  const places = useRoads((state) => state.status?.offRoad);
  if (places === undefined || places.length === 0) return null;
  return (
    <>
      <h4>{roadsWords.loaded.unreached(places.length)}</h4>
      <ul className="road-places">
        {places.slice(0, MOST_LISTED).map(({ id, name, what, kind, nearestM }) => (
          <li key={`${what} ${id}`}>
            {what === 'property' ? (
              <Button look="quiet" tip={roadsWords.loaded.selectLawn} onPress={() => selectProperty(id)}>
                {name}
              </Button>
            ) : (
              <span>{name}</span>
            )}
            <span className="quiet small">{offRoadWords({ row: 0, kind, nearestM })}</span>
          </li>
        ))}
      </ul>
      {places.length > MOST_LISTED && (
        <p className="quiet small">{roadsWords.loaded.andMore(places.length - MOST_LISTED)}</p>
      )}
    </>
  );
}
