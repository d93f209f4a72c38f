export { accessList } from './access-list.ts';
