import {
  Blocks,
  CircleDashed,
  DoorOpen,
  Droplet,
  House,
  type LucideIcon,
  MousePointer2,
  Move,
  PenLine,
  Route,
  Scissors,
  Slash,
  SquareDashed,
  SquareParking,
  Waypoints,
} from 'lucide-react';
import { CommandButton } from '../../commands/index.ts';
import { setDraftAside, useCarry, useDraft } from '../../stores/index.ts';
import { drawWords } from '../../texts/ground/index.ts';
import { Button } from '../../ui/index.ts';

const GROUPS: readonly (readonly (readonly [id: string, icon: LucideIcon])[])[] = [
  [
    ['draw.lawn', PenLine],
    ['draw.zone', Waypoints],
    ['draw.zone-rectangle', SquareDashed],
    ['draw.zone-circle', CircleDashed],
  ],
  [
    ['draw.building', House],
    ['draw.paving', Route],
    ['draw.exclusion', Blocks],
  ],
  [
    ['draw.gate', DoorOpen],
    ['draw.parking', SquareParking],
    ['draw.hose-stand', Droplet],
  ],
  [
    ['draw.corners', Move],
    ['draw.cut', Scissors],
    ['draw.split', Slash],
  ],
];

/** The tools, beside the map's left edge. Each says its key, and why it cannot be used now. */
export function DrawStrip() {
  const drawing = useDraft((state) => state.draft !== null);
  const carrying = useCarry((state) => state.carry !== null);
  return (
    <div className="draw-strip" role="toolbar" aria-label={drawWords.strip.label} aria-orientation="vertical">
      <div className="draw-tools">
        <Button
          label={drawWords.strip.choose}
          tip={drawWords.strip.chooseTip}
          pressed={!drawing && !carrying}
          onPress={setDraftAside}
        >
          <MousePointer2 size={16} aria-hidden="true" />
        </Button>
      </div>
      {GROUPS.map((tools) => (
        <div key={tools[0]?.[0]} className="draw-tools">
          {tools.map(([id, Icon]) => (
            <CommandButton key={id} id={id} bare>
              <Icon size={16} aria-hidden="true" />
            </CommandButton>
          ))}
        </div>
      ))}
    </div>
  );
}
