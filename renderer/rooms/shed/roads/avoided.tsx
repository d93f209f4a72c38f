import { PenLine, X } from 'lucide-react';
import { useState } from 'react';
import { ok, type Result } from '../../../../core/base/index.ts';
import { type BookRoads, PLAIN_ROADS } from '../../../../core/book/index.ts';
import { changeRoads, drawAvoided, freshId, pickFile, showError, useDraft, whyNotDraw } from '../../../stores/index.ts';
import { Button, DraftInput, Section } from '../../../ui/index.ts';
import { readAreas, readCorners } from './avoid-corners.ts';

/** Areas that are not driven through. */
export function AvoidedAreas({ roads = PLAIN_ROADS }: { readonly roads: BookRoads | undefined }) {
  // Whether one can be drawn now depends on what is being drawn.
  useDraft((state) => state.draft !== null);
  const [name, setName] = useState('');
  const [corners, setCorners] = useState('');
  const read = corners.trim() === '' ? null : readCorners(corners);
  const whyNot = whyNotAdd(name, read);
  const add = () => {
    if (read?.ok !== true) return;
    const id = freshId(roads.avoid, 'avoid');
    const done = changeRoads({ avoid: [...roads.avoid, { id, name: name.trim(), area: read.value }] }, `Avoid ${name}`);
    if (!done.ok) return;
    setName('');
    setCorners('');
  };
  return (
    <Section
      title="Areas to drive round"
      aside={<Button onPress={() => fromFile(roads).catch(() => undefined)}>From a GeoJSON file…</Button>}
    >
      <p className="quiet small">
        A place inside is still driven to; nothing else goes through. To change its corners, remove an area and draw it
        again.
      </p>
      <ul className="road-places">
        {roads.avoid.map((each) => (
          <li key={each.id}>
            <DraftInput
              label={`Name of ${each.name}`}
              text={each.name}
              onCommit={(typed) => rename(roads, each.id, typed)}
            />
            <Button
              look="quiet"
              label={`Drive through ${each.name} again`}
              tip="Remove"
              onPress={() => {
                changeRoads({ avoid: roads.avoid.filter(({ id }) => id !== each.id) }, `Avoid ${each.name} no more`);
              }}
            >
              <X size={14} aria-hidden="true" />
            </Button>
          </li>
        ))}
      </ul>
      <div className="road-tools">
        <Button whyNot={whyNotDraw()} onPress={drawAvoided}>
          <PenLine size={14} aria-hidden="true" />
          Draw an area to drive round
        </Button>
        <span className="quiet small">or give its corners:</span>
      </div>
      <div className="road-avoid">
        <input
          className="input"
          aria-label="What is to be driven round"
          placeholder="what it is"
          value={name}
          maxLength={200}
          onChange={(event) => setName(event.target.value)}
        />
        <textarea
          className="input"
          aria-label="Corners of the area, latitude and longitude"
          placeholder={'corners: latitude, longitude\n40.0381, -89.4130\n40.0381, -89.4110\n40.0370, -89.4120'}
          rows={4}
          value={corners}
          onChange={(event) => setCorners(event.target.value)}
        />
        {read?.ok === false && <span className="fault" role="alert">{`${read.error.detail} ${read.error.hint}`}</span>}
        <Button whyNot={whyNot} onPress={add}>
          Drive round it
        </Button>
      </div>
    </Section>
  );
}

/** One that is emptied stays what it was. */
function rename(roads: BookRoads, id: string, typed: string): Result<unknown> {
  if (typed === '') return ok(true);
  const name = typed.slice(0, MOST_NAME);
  const avoid = roads.avoid.map((each) => (each.id === id ? { ...each, name } : each));
  return changeRoads({ avoid }, `Call what is driven round ${name}`);
}

/** Characters of a name. */
const MOST_NAME = 200;

/** Every polygon of a file becomes an area. */
async function fromFile(roads: BookRoads): Promise<void> {
  const picked = await pickFile('geojson');
  if (picked === null) return;
  const read = readAreas(picked.text ?? '', picked.name);
  if (!read.ok) {
    showError(read.error);
    return;
  }
  const avoid = [...roads.avoid];
  for (const each of read.value) avoid.push({ ...each, id: freshId(avoid, 'avoid') });
  changeRoads({ avoid }, `Drive round the areas of ${picked.name}`);
}

function whyNotAdd(name: string, read: ReturnType<typeof readCorners> | null): string | null {
  if (name.trim() === '') return 'Say what it is first.';
  if (read === null) return 'Give its corners first.';
  return read.ok ? null : read.error.detail;
}
