export { PaperRoom } from './paper-room.tsx';
export { SHEET_COUNT } from './sheets.ts';
