import type { Point } from 'leaflet';

const BESIDE_PX = 18;

/** A small plate beside the pointer. What it says is in the panel too, so screen readers pass it over. */
export type Readout = {
  readonly show: (at: Point, lines: readonly string[]) => void;
  readonly hide: () => void;
  readonly remove: () => void;
};

export function createReadout(container: HTMLElement): Readout {
  const plate = document.createElement('div');
  plate.className = 'draw-readout';
  plate.hidden = true;
  plate.setAttribute('aria-hidden', 'true');
  container.append(plate);
  let shown = '';
  return {
    show: (at, lines) => {
      const text = lines.join('\n');
      plate.hidden = text === '';
      if (text !== shown) plate.textContent = text;
      shown = text;
      const left = at.x > container.clientWidth - 190;
      const x = left ? at.x - BESIDE_PX - plate.offsetWidth : at.x + BESIDE_PX;
      plate.style.transform = `translate(${x}px, ${Math.min(at.y + BESIDE_PX, container.clientHeight - 90)}px)`;
    },
    hide: () => {
      plate.hidden = true;
    },
    remove: () => plate.remove(),
  };
}
