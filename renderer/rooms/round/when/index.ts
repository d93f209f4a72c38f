export { WhenView } from './when-view.tsx';
