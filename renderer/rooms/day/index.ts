export { BOARD_KEYS } from './board/use-board-hands.ts';
export { DayRoom } from './day-room.tsx';
