export { ShedRoom } from './shed-room.tsx';
