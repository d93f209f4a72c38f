export {
  type History,
  NO_HISTORY,
  remember,
  type Step,
  stepBack,
  stepForward,
} from '../../core/edit/index.ts';
