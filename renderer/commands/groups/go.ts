import { SHEETS } from '../../../core/reports/index.ts';
import {
  goTo,
  goToView,
  ROOM_TITLES,
  ROOM_VIEWS,
  ROOMS,
  type RoomWithViews,
  SHELF_TITLES,
  type ShedPlace,
  selectSheet,
  selectShelf,
} from '../../stores/index.ts';
import { commandsWords } from '../../texts/index.ts';
import { type Command, type CommandSpec, commandsOf } from '../command.ts';
import { needsBook } from './conditions.ts';

const words = commandsWords.go;

type Place = readonly [id: string, spec: Pick<CommandSpec, 'title' | 'run' | 'keys'>];

const rooms: readonly Place[] = ROOMS.map((room, index) => [
  `go.${room}`,
  { title: ROOM_TITLES[room], keys: [`Alt+${index + 1}`], run: () => goTo(room) },
]);

const shelves: readonly Place[] = (Object.keys(SHELF_TITLES) as readonly ShedPlace[]).map((shelf) => [
  `go.shed-${shelf}`,
  {
    title: words.within(ROOM_TITLES.shed, SHELF_TITLES[shelf]),
    run: () => {
      selectShelf(shelf);
      goTo('shed');
    },
  },
]);

function viewsOf<Name extends RoomWithViews>(room: Name): readonly Place[] {
  return ROOM_VIEWS[room].map(({ id, title }) => [
    `go.${room}-${id}`,
    { title: words.within(ROOM_TITLES[room], title), run: () => goToView(room, id) },
  ]);
}

const sheets: readonly Place[] = SHEETS.map(({ id, name }) => [
  `go.paper-${id}`,
  {
    title: words.within(ROOM_TITLES.paper, name),
    run: () => {
      selectSheet(id);
      goTo('paper');
    },
  },
]);

/** Every room, shelf, view and sheet by its name. */
export const goCommands: readonly Command[] = commandsOf(
  'go',
  Object.fromEntries(
    [...rooms, ...shelves, ...viewsOf('round'), ...viewsOf('day'), ...sheets].map(([id, spec]) => [
      id,
      { ...spec, whyNot: needsBook },
    ]),
  ),
);
