import { addNewRound, currentRound, goTo, importFile, planRound, selectShelf, showView } from '../stores/index.ts';
import { lookAroundFirst } from '../tour/index.ts';
import type { Need } from './missing.ts';

/** Does what is needed next, or goes to where it is done. */
export function takeNextStep(need: Need): void {
  switch (need) {
    case 'lawns':
      goTo('ground');
      importFile().catch(() => undefined);
      return;
    case 'machines':
    case 'fillPoints':
    case 'rigs':
    case 'treatments':
      selectShelf(need);
      goTo('shed');
      return;
    case 'round':
      addNewRound();
      goTo('round');
      return;
    case 'plan': {
      const round = currentRound();
      if (round !== null) planRound(round.id).catch(() => undefined);
      return;
    }
    case 'stops':
      showView('round', 'plan');
      goTo('round');
      return;
  }
}

/** Opens the sample that shows the most. */
export function lookAtFirstSample(): void {
  lookAroundFirst().catch(() => undefined);
}
