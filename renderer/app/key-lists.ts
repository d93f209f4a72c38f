import type { Block, Sheet } from '../../core/reports/index.ts';
import { COMMAND_GROUPS, COMMANDS, GROUP_TITLES, IS_MAC, keyWords } from '../commands/index.ts';
import { CROSSHAIR_KEYS, DRAWING_KEYS, MAP_KEYS } from '../map/index.ts';
import { RIBBON_KEYS } from '../ribbon/index.ts';
import { BOARD_KEYS } from '../rooms/day/index.ts';
import { CALENDAR_KEYS } from '../rooms/round/index.ts';
import { appWords } from '../texts/app/index.ts';
import { commonWords } from '../texts/index.ts';
import { LIST_KEYS, PANEL_KEYS, TEXT_KEYS } from '../ui/index.ts';

const words = appWords.keys;

/** A key, or several that do like things, and what they do. */
export type KeyLine = { readonly what: string; readonly keys: readonly string[] };
export type KeyList = { readonly title: string; readonly lines: readonly KeyLine[] };

type Within = readonly [what: string, keys: readonly string[]];

/** What keys do inside a part of the window; each part says beside its own code which keys it takes. */
const WITHIN: readonly (readonly [title: string, lines: readonly Within[]])[] = [
  [
    words.anywhere,
    [
      [words.contextMenu, ['Shift+F10']],
      [words.takeText, TEXT_KEYS],
      [words.moveInList, LIST_KEYS],
      [words.sizePanel, PANEL_KEYS],
    ],
  ],
  [
    words.map,
    [
      [words.moveMap, MAP_KEYS.move],
      [words.zoomMap, MAP_KEYS.zoom],
    ],
  ],
  [
    words.drawing,
    [
      [words.crosshair, CROSSHAIR_KEYS.step],
      [words.crosshairFoot, CROSSHAIR_KEYS.foot],
      [words.crosshairTenth, CROSSHAIR_KEYS.tenth],
      [words.setCorner, DRAWING_KEYS.set],
      [words.noSnapping, DRAWING_KEYS.free],
      [words.moveMap, DRAWING_KEYS.pan],
    ],
  ],
  [
    words.dayAndRound,
    [
      [words.ribbon, RIBBON_KEYS],
      [words.boardGo, BOARD_KEYS.go],
      [words.boardCarry, BOARD_KEYS.carry],
      [words.boardOut, BOARD_KEYS.out],
      [words.calendar, CALENDAR_KEYS],
    ],
  ],
];

/** Every key of the program: those of commands by group, then those that count within a part of the window. */
export function keyLists(): readonly KeyList[] {
  const ofCommands = COMMAND_GROUPS.map((group) => ({
    title: GROUP_TITLES[group],
    lines: COMMANDS.filter((command) => command.group === group && command.keys.length > 0).map((command) => ({
      what: command.title(),
      keys: command.keys.map((key) => keyWords(key, IS_MAC)),
    })),
  }));
  const within = WITHIN.map(([title, lines]) => ({
    title,
    lines: lines.map(([what, keys]) => ({ what, keys: keys.map((key) => keyWords(key, IS_MAC)) })),
  }));
  return [...ofCommands, ...within].filter(({ lines }) => lines.length > 0);
}

/** The same as a sheet, to hang beside the screen. */
export function keysSheet(lists: readonly KeyList[]): Sheet {
  return {
    id: 'keys',
    title: words.title,
    subtitle: commonWords.program,
    invented: false,
    blocks: lists.flatMap(({ title, lines }): readonly Block[] => [
      { kind: 'heading', text: title },
      {
        kind: 'table',
        columns: [
          { label: words.what, align: 'left', share: 60 },
          { label: words.key, align: 'left', share: 40 },
        ],
        rows: lines.map(({ what, keys }) => [what, keys.join(words.or)]),
      },
    ]),
  };
}
