import { DomUtil, Layer, type Map as LeafletMap } from 'leaflet';
import { mapFromCorners, type PlaneMap } from '../../core/imagery/index.ts';
import type { OverlayLook } from './background-scene.ts';
import { toLatLng } from './bounds.ts';

/** A picture stretched over four places of the ground by one matrix of the style sheet; it moves with the map. */
export class PictureLayer extends Layer {
  private readonly image: HTMLImageElement;
  private look: OverlayLook;

  constructor(look: OverlayLook, onLost: () => void) {
    super({ pane: 'pictures' });
    this.look = look;
    this.image = document.createElement('img');
    this.image.className = 'laid-picture';
    this.image.alt = '';
    this.image.addEventListener('error', onLost);
    this.image.src = look.address;
    this.show(look);
  }

  /** Takes new places or another opacity; the same picture is not loaded again. */
  show(look: OverlayLook): void {
    this.look = look;
    this.image.style.opacity = String(look.opacity);
    this.image.style.width = `${look.widthPx}px`;
    this.image.style.height = `${look.heightPx}px`;
    this.lay();
  }

  override onAdd(): this {
    this.getPane()?.append(this.image);
    this.lay();
    return this;
  }

  override onRemove(): this {
    DomUtil.remove(this.image);
    return this;
  }

  override getEvents() {
    return { zoom: this.lay, viewreset: this.lay, moveend: this.lay };
  }

  private lay(): void {
    const map = this._map as LeafletMap | undefined;
    if (map === undefined || map === null) return;
    const corners = this.look.corners.map((at) => map.latLngToLayerPoint(toLatLng(at)));
    const matrix = mapFromCorners(this.look, corners);
    this.image.style.display = matrix === null ? 'none' : '';
    if (matrix !== null) this.image.style.transform = cssMatrix(matrix);
  }
}

/** The matrix3d of a map of the plane: its rows and columns by way of z, which stays. */
export function cssMatrix([a, b, c, d, e, f, g, h, i]: PlaneMap): string {
  const cells = [a, d, 0, g, b, e, 0, h, 0, 0, 1, 0, c, f, 0, i].map((cell) => cell / i);
  cells[10] = 1;
  return `matrix3d(${cells.map((cell) => Number(cell.toPrecision(12))).join(', ')})`;
}
