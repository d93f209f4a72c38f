export { CALENDAR_KEYS } from './calendar/index.ts';
export { withMember } from './round-edits.ts';
export { RoundRoom } from './round-room.tsx';
