import { X } from 'lucide-react';
import { useState } from 'react';
import type { BookRoads } from '../../../../core/book/index.ts';
import { changeRoads, freshId, PLAIN_ROADS, pickFile, showError } from '../../../stores/index.ts';
import { Button, Section } from '../../../ui/index.ts';
import { readAreas, readCorners } from './avoid-corners.ts';

/** Areas that are not driven through. */
export function AvoidedAreas({ roads = PLAIN_ROADS }: { readonly roads: BookRoads | undefined }) {
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
      <p className="quiet small">A place inside is still driven to; nothing else goes through.</p>
      <ul className="road-places">
        {roads.avoid.map((each) => (
          <li key={each.id}>
            <span>{each.name}</span>
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
