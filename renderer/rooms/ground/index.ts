export { GroundRoom } from './ground-room.tsx';
