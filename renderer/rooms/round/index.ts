export { withMember } from './round-edits.ts';
export { RoundRoom } from './round-room.tsx';
