import { TriangleAlert } from 'lucide-react';
import { useChosenBackground } from '../scene/index.ts';
import { NO_BACKGROUND, useBackground, useHost } from '../stores/index.ts';
import { backdropWords } from '../texts/index.ts';

/** Says which background is shown and whose it is, and when parts of it do not come. */
export function BackgroundPlate() {
  const chosen = useChosenBackground();
  const wanted = useHost((state) => state.settings.background);
  const list = useBackground((state) => state.list);
  const missing = useBackground((state) => state.missing);
  const trouble = useBackground((state) => state.trouble);
  if (chosen === null) {
    const lost = wanted === NO_BACKGROUND ? undefined : list.find(({ id }) => id === wanted);
    return lost?.fault == null ? null : (
      <p className="backdrop-plate" role="status">
        <Fault words={`${lost.name}: ${lost.fault.detail}`} />
      </p>
    );
  }
  const isOff = chosen.asks !== null && !chosen.allowed;
  return (
    <p className="backdrop-plate" role="status">
      <span>
        {backdropWords.plate.behind(chosen.name)}
        {chosen.credit !== '' && <span className="quiet"> · {chosen.credit}</span>}
      </span>
      {isOff && <span className="quiet">{backdropWords.plate.offline}</span>}
      {missing > 0 && !isOff && (
        <Fault
          words={backdropWords.plate.missing(missing, trouble === null ? '' : `: ${trouble.where}. ${trouble.detail}`)}
        />
      )}
    </p>
  );
}

function Fault({ words }: { readonly words: string }) {
  return (
    <span className="caution backdrop-fault">
      <TriangleAlert size={13} aria-hidden="true" /> {words}
    </span>
  );
}
