import type { BookRoads } from '../../../../core/book/index.ts';
import { offRoadWords } from '../../../../core/travel/index.ts';
import {
  cancelRoadImport,
  changeRoads,
  forgetRoads,
  importRoads,
  selectProperty,
  useRoads,
} from '../../../stores/index.ts';
import { Button, Section, Tick } from '../../../ui/index.ts';
import { pairsWords } from './words.ts';

/** What roads lie beside the book, and what they are good for. */
export function LoadedRoads({ roads }: { readonly roads: BookRoads | undefined }) {
  const status = useRoads((state) => state.status);
  const importing = useRoads((state) => state.importing);
  const whyNot = importing === null ? null : 'An extract is being imported.';
  const hasRoads = status?.roads != null || roads?.extract !== undefined;
  return (
    <Section
      title="Roads beside the book"
      aside={
        <Button look={hasRoads ? 'plain' : 'main'} whyNot={whyNot} onPress={() => importRoads().catch(() => undefined)}>
          {hasRoads ? 'Import another extract…' : 'Import an extract…'}
        </Button>
      }
    >
      {importing !== null && <Importing />}
      {status === null ? <p className="quiet small">Looking…</p> : <About />}
      {status !== null && <p>{pairsWords(status)}</p>}
      {status?.trouble != null && <p className="fault">{status.trouble}</p>}
      {hasRoads && (
        <div className="road-tools">
          <Tick
            label="drive by these roads in plans"
            checked={roads?.use ?? true}
            onChange={(use) => {
              changeRoads({ use }, use ? 'Drive by roads' : 'Drive by the estimate');
            }}
          />
          <Button look="quiet" whyNot={whyNot} onPress={() => forgetRoads().catch(() => undefined)}>
            Remove the roads
          </Button>
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
  const words = `Reading ${progress?.step ?? 'roads'} of ${fileName}`;
  return (
    <div className="road-import" role="status">
      <span>{words}</span>
      {progress === null || progress.total === 0 ? (
        <progress aria-label={words} />
      ) : (
        <progress aria-label={words} value={progress.done} max={progress.total} />
      )}
      <Button onPress={cancelRoadImport}>Cancel</Button>
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
    return (
      <p className="quiet">
        None yet. Take an extract of OpenStreetMap for your counties (a file ending in .osm.pbf or .osm, from any of the
        places that give them away) and import it once: drive times then follow real roads, without a network.
      </p>
    );
  }
  const [west, south, east, north] = about.bounds.map((each) => each.toFixed(3));
  const { counts } = about;
  const facts: readonly (readonly [string, string])[] = [
    ['roads', `${counts.roads.toLocaleString('en-US')} of ${counts.ways.toLocaleString('en-US')} lines of the map`],
    ['turns that are not allowed', counts.restrictionsUsed.toLocaleString('en-US')],
    ['from', `${south}, ${west} to ${north}, ${east}`],
    ['as of', about.dataOf === '' ? 'not told' : about.dataOf.slice(0, 10)],
    ['whose', [about.attribution, about.licence].filter((each) => each !== '').join(', ')],
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
      <h4>No road reaches {places.length === 1 ? 'one place' : `${places.length} places`}</h4>
      <ul className="road-places">
        {places.slice(0, MOST_LISTED).map(({ id, name, what, kind, nearestM }) => (
          <li key={`${what} ${id}`}>
            {what === 'property' ? (
              <Button look="quiet" tip="Select this lawn" onPress={() => selectProperty(id)}>
                {name}
              </Button>
            ) : (
              <span>{name}</span>
            )}
            <span className="quiet small">{offRoadWords({ row: 0, kind, nearestM })}</span>
          </li>
        ))}
      </ul>
      {places.length > MOST_LISTED && <p className="quiet small">and {places.length - MOST_LISTED} more.</p>}
    </>
  );
}
