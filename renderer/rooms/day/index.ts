export { DayRoom } from './day-room.tsx';
