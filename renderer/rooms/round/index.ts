export { RoundRoom } from './round-room.tsx';
