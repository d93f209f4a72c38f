import { useState } from 'react';
import type { PassPicture } from '../../core/passes/index.ts';
import { CommandButton, useOffer } from '../commands/index.ts';
import { type PassWish, readLeg, showPasses, useFormat, useLaidPasses, usePasses } from '../stores/index.ts';
import { KEPT, passesWords } from '../texts/index.ts';
import { Choice, Section } from '../ui/index.ts';
import { figuresOf, legName, legWords } from './pass-words.ts';
import { useEdge } from './use-edge.ts';

/** Passes that can be looked at, and what they are called. */
export type PassSubject = { readonly words: string; readonly wish: PassWish };

type PassPanelProps = {
  readonly subjects: readonly PassSubject[];
  /** Said where there is nothing to look at. */
  readonly whyNone: string;
};

/** The passes over a zone: switched on for the map, in figures, and read stretch by stretch along the way. */
export function PassPanel({ subjects, whyNone }: PassPanelProps) {
  const isOn = usePasses((state) => state.isOn);
  const [wanted, setWanted] = useState('');
  const subject = subjects.find((each) => keyOf(each) === wanted) ?? subjects[0] ?? null;
  useLaidPasses(subject?.wish ?? null);
  useOffer('view.passes', { whyNot: subject === null ? whyNone : null, run: () => showPasses(!isOn) });
  return (
    <Section
      title={passesWords.panel.passes}
      aside={
        <CommandButton id="view.passes" look="quiet">
          {passesWords.panel.showOnMap}
        </CommandButton>
      }
    >
      {subject === null && <p className="quiet small">{whyNone}</p>}
      {subjects.length > 1 && subject !== null && (
        <Choice
          label={passesWords.panel.passesOf}
          value={keyOf(subject)}
          options={subjects.map((each) => ({ value: keyOf(each), words: each.words }))}
          onChoose={setWanted}
        />
      )}
      {subjects.length === 1 && subject !== null && <p className="quiet small">{subject.words}</p>}
      {isOn && subject !== null && <Laid />}
    </Section>
  );
}

const keyOf = ({ wish }: PassSubject): string => JSON.stringify(wish);

function Laid() {
  const { picture, fault, isLaying, shown } = usePasses();
  if (fault !== null) {
    return (
      <p className="caution small">
        {fault.detail} {KEPT[fault.code]} {fault.hint}
      </p>
    );
  }
  if (picture !== null) return <Reading picture={picture} />;
  if (isLaying || shown === null) return <p className="quiet small">{passesWords.panel.laying}</p>;
  return <p className="quiet small">{passesWords.panel.noOutline}</p>;
}

function Reading({ picture }: { readonly picture: PassPicture }) {
  const words = useFormat();
  const edge = useEdge(usePasses((state) => state.shown));
  return (
    <>
      <dl className="pass-figures">
        {[...figuresOf(picture, words), ...(edge === null ? [] : [edge])].map((figure) => (
          <div key={figure.name}>
            <dt>{figure.name}</dt>
            <dd>{figure.words}</dd>
          </div>
        ))}
      </dl>
      {picture.notes.map((note) => (
        <p key={note.code} className="caution small">
          {note.message}
        </p>
      ))}
      {picture.legs.length > 0 && <Along picture={picture} />}
      <Legend />
    </>
  );
}

/** Drives along the way, stretch by stretch: by arrow keys, by hand, or by pointing at the map. */
function Along({ picture }: { readonly picture: PassPicture }) {
  const words = useFormat();
  const leg = usePasses((state) => state.leg);
  const at = leg ?? 0;
  const spoken = `${legName(picture, at)}: ${legWords(picture, at, words)}`;
  return (
    <div className="pass-along">
      <label className="small">
        {passesWords.panel.alongWay}
        <input
          type="range"
          min={0}
          max={picture.legs.length - 1}
          value={at}
          aria-valuetext={spoken}
          onFocus={() => leg === null && readLeg(0)}
          onChange={(event) => readLeg(Number(event.target.value))}
        />
      </label>
      <output className="small">
        {leg === null ? (
          <span className="quiet">{passesWords.panel.stepAdvice}</span>
        ) : (
          <>
            <b>{legName(picture, at)}</b> {legWords(picture, at, words)}
          </>
        )}
      </output>
    </div>
  );
}

const SIGNS = [
  { sign: 'swath', words: passesWords.panel.swath },
  { sign: 'trim', words: passesWords.panel.trimPass },
  { sign: 'transit', words: passesWords.panel.transit },
  { sign: 'overlap', words: passesWords.panel.twice },
  { sign: 'missed', words: passesWords.panel.missed },
] as const;

function Legend() {
  return (
    <ul className="pass-legend small">
      {SIGNS.map(({ sign, words }) => (
        <li key={sign}>
          <svg className={`pass-sign pass-sign-${sign}`} width="26" height="12" aria-hidden="true">
            {sign === 'overlap' || sign === 'missed' ? (
              <rect x="0.5" y="0.5" width="25" height="11" fill={`url(#pass-${sign})`} />
            ) : (
              <path d="M0 6H13H26" />
            )}
          </svg>
          {words}
        </li>
      ))}
    </ul>
  );
}
