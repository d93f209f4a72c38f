import { PenLine, X } from 'lucide-react';
import { useState } from 'react';
import { ok, type Result } from '../../../../core/base/index.ts';
import { type BookRoads, PLAIN_ROADS } from '../../../../core/book/index.ts';
import { changeRoads, drawAvoided, freshId, pickFile, showError, useDraft, whyNotDraw } from '../../../stores/index.ts';
import { commonWords } from '../../../texts/index.ts';
import { roadsWords } from '../../../texts/shed/index.ts';
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
    const done = changeRoads(
      { avoid: [...roads.avoid, { id, name: name.trim(), area: read.value }] },
      roadsWords.avoided.added(name),
    );
    if (!done.ok) return;
    setName('');
    setCorners('');
  };
  return (
    <Section
      title={roadsWords.avoided.areasDriveRound}
      aside={<Button onPress={() => fromFile(roads).catch(() => undefined)}>{roadsWords.avoided.fromFile}</Button>}
    >
      <p className="quiet small">{roadsWords.avoided.note}</p>
      <ul className="road-places">
        {roads.avoid.map((each) => (
          <li key={each.id}>
            <DraftInput
              label={roadsWords.avoided.nameOf(each.name)}
              text={each.name}
              onCommit={(typed) => rename(roads, each.id, typed)}
            />
            <Button
              look="quiet"
              label={roadsWords.avoided.driveThrough(each.name)}
              tip={commonWords.remove}
              onPress={() => {
                changeRoads(
                  { avoid: roads.avoid.filter(({ id }) => id !== each.id) },
                  roadsWords.avoided.removed(each.name),
                );
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
          {roadsWords.avoided.draw}
        </Button>
        <span className="quiet small">{roadsWords.avoided.giveCorners}</span>
      </div>
      <div className="road-avoid">
        <input
          className="input"
          aria-label={roadsWords.avoided.whatLabel}
          placeholder={roadsWords.avoided.whatPlaceholder}
          value={name}
          maxLength={200}
          onChange={(event) => setName(event.target.value)}
        />
        <textarea
          className="input"
          aria-label={roadsWords.avoided.cornersLabel}
          placeholder={roadsWords.avoided.cornersPlaceholder}
          rows={4}
          value={corners}
          onChange={(event) => setCorners(event.target.value)}
        />
        {read?.ok === false && <span className="fault" role="alert">{`${read.error.detail} ${read.error.hint}`}</span>}
        <Button whyNot={whyNot} onPress={add}>
          {roadsWords.avoided.add}
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
  return changeRoads({ avoid }, roadsWords.avoided.named(name));
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
  changeRoads({ avoid }, roadsWords.avoided.addedFrom(picked.name));
}

function whyNotAdd(name: string, read: ReturnType<typeof readCorners> | null): string | null {
  if (name.trim() === '') return roadsWords.avoided.sayWhatFirst;
  if (read === null) return roadsWords.avoided.giveCornersFirst;
  return read.ok ? null : read.error.detail;
}
