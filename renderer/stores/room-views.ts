import { dayWords } from '../texts/day/index.ts';
import { commonWords } from '../texts/index.ts';
import { roundWords } from '../texts/round/index.ts';
import { machinesWords, productsWords, rigsWords, shedWords } from '../texts/shed/index.ts';
import type { ShedPlace } from './selection.ts';
import { goTo, type Room, showView } from './view.ts';

/** The views that share a place in a room, in the order of their titles; the first one is shown at first. */
export const ROOM_VIEWS = {
  round: [
    { id: 'plan', title: roundWords.room.plan },
    { id: 'when', title: roundWords.room.when },
    { id: 'calendar', title: roundWords.room.calendar },
    { id: 'programmes', title: roundWords.room.programmes },
    { id: 'season', title: roundWords.room.season },
    { id: 'buy', title: roundWords.room.buy },
    { id: 'fleets', title: roundWords.room.fleets },
  ],
  day: [
    { id: 'levels', title: dayWords.room.levels },
    { id: 'rigs', title: dayWords.room.rigs },
    { id: 'who', title: dayWords.room.whoCanGo },
    { id: 'sure', title: dayWords.room.howSure },
    { id: 'morning', title: dayWords.room.morning },
    { id: 'under-way', title: dayWords.room.underWay },
  ],
} as const satisfies Partial<Record<Room, readonly { readonly id: string; readonly title: string }[]>>;

export type RoomWithViews = keyof typeof ROOM_VIEWS;
export type ViewId<Name extends RoomWithViews> = (typeof ROOM_VIEWS)[Name][number]['id'];

export const ROOM_TITLES: Readonly<Record<Room, string>> = {
  ground: commonWords.rooms.ground,
  shed: commonWords.rooms.shed,
  round: commonWords.rooms.round,
  day: commonWords.rooms.day,
  paper: commonWords.rooms.paper,
};

export const SHELF_TITLES: Readonly<Record<ShedPlace, string>> = {
  machines: machinesWords.machine.machines,
  handMethods: machinesWords.hand.handMethods,
  rigs: rigsWords.rig.rigs,
  fillPoints: rigsWords.rig.fillPoints,
  products: productsWords.product.products,
  mixes: productsWords.product.mixes,
  treatments: productsWords.treatment.treatments,
  applicators: rigsWords.applicators.applicators,
  terms: shedWords.room.money,
  roads: shedWords.room.roads,
};

/** Goes to a room and shows one of its views. */
export function goToView<Name extends RoomWithViews>(room: Name, view: ViewId<Name>): void {
  showView(room, view);
  goTo(room);
}
