export { ProgrammesView } from './programmes-view.tsx';
