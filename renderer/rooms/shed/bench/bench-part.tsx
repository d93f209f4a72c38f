import { useState } from 'react';
import type { HandMethod, Machine } from '../../../../core/book/index.ts';
import { benchWords } from '../../../texts/shed/index.ts';
import { Choice, Section } from '../../../ui/index.ts';
import type { Commit } from '../column.tsx';
import type { Part } from '../part.tsx';
import { CalibrationBench } from './bench.tsx';

/** The bench for the heads of a machine. */
export const machineBench: Part<Machine> = {
  title: benchWords.part.calibrationBench,
  shownFor: (machine) => machine.heads.length > 0,
  draw: (machine, _book, commit) => <MachineBench machine={machine} commit={commit} />,
};

function MachineBench({ machine, commit }: { readonly machine: Machine; readonly commit: Commit<Machine> }) {
  const [headId, setHeadId] = useState(machine.heads[0]?.id ?? '');
  const head = machine.heads.find((each) => each.id === headId) ?? machine.heads[0];
  if (head === undefined) return null;
  return (
    <Section title={benchWords.part.calibrationBench}>
      <Choice
        label={benchWords.part.headChosen}
        value={head.id}
        options={machine.heads.map(({ id, name }) => ({ value: id, words: name }))}
        onChoose={setHeadId}
      />
      <CalibrationBench
        key={head.id}
        owner={head}
        onKeep={(next, label) => {
          commit({ ...machine, heads: machine.heads.map((each) => (each.id === next.id ? next : each)) }, label);
        }}
      />
    </Section>
  );
}

/** The bench of a hand method. */
export const handBench: Part<HandMethod> = {
  title: benchWords.part.calibrationBench,
  shownFor: () => true,
  draw: (method, _book, commit) => (
    <Section title={benchWords.part.calibrationBench}>
      <CalibrationBench
        owner={method}
        onKeep={(next, label) => {
          commit(next, label);
        }}
      />
    </Section>
  ),
};
