import { DayRoom } from '../rooms/day/index.ts';
import { GroundRoom } from '../rooms/ground/index.ts';
import { PaperRoom } from '../rooms/paper/index.ts';
import { RoundRoom } from '../rooms/round/index.ts';
import { ShedRoom } from '../rooms/shed/index.ts';
import type { Room } from '../stores/index.ts';

export function RoomView({ room }: { readonly room: Room }) {
  switch (room) {
    case 'ground':
      return <GroundRoom />;
    case 'shed':
      return <ShedRoom />;
    case 'round':
      return <RoundRoom />;
    case 'day':
      return <DayRoom />;
    case 'paper':
      return <PaperRoom />;
  }
}
