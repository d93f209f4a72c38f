export { MissedNote } from './missed-note.tsx';
export { WhenView } from './when-view.tsx';
