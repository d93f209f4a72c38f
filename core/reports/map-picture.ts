import type { MapPicture } from './blocks.ts';
import { escapeHtml } from './escape.ts';
import type { Spot } from './map-labels.ts';

/** How far the fourth corner may lie from where the other three put it, px: a matrix of SVG keeps parallels. */
const MOST_SKEW_PX = 3;

const idOf = ({ id }: MapPicture): string => `picture-${id.replace(/[^A-Za-z0-9-]/g, '')}`;

/** The bytes of pictures, once for all maps of a sheet. */
export function picturesSvg(pictures: readonly MapPicture[]): string {
  if (pictures.length === 0) return '';
  const images = pictures.map((picture) => {
    const { address, widthPx, heightPx } = picture;
    return `<image id="${idOf(picture)}" width="${widthPx}" height="${heightPx}" preserveAspectRatio="none" href="${escapeHtml(address)}"/>`;
  });
  return `<svg class="pictures" width="0" height="0" aria-hidden="true"><defs>${images.join('')}</defs></svg>`;
}

/** A picture laid below a map; '' where its corners are no parallelogram, for then it would lie wrong. */
export function pictureSvg(picture: MapPicture, spot: (at: MapPicture['corners'][number]) => Spot): string {
  const [upperLeft, upperRight, lowerRight, lowerLeft] = picture.corners.map(spot) as [Spot, Spot, Spot, Spot];
  const skew = [0, 1].map((axis) => {
    const at = (corner: Spot): number => corner[axis] ?? 0;
    return at(upperRight) + at(lowerLeft) - at(upperLeft) - at(lowerRight);
  });
  if (Math.hypot(...skew) > MOST_SKEW_PX) return '';
  const { widthPx, heightPx, opacity } = picture;
  const matrix = [
    (upperRight[0] - upperLeft[0]) / widthPx,
    (upperRight[1] - upperLeft[1]) / widthPx,
    (lowerLeft[0] - upperLeft[0]) / heightPx,
    (lowerLeft[1] - upperLeft[1]) / heightPx,
    upperLeft[0],
    upperLeft[1],
  ].map((each) => Number(each.toPrecision(8)));
  return `<use href="#${idOf(picture)}" opacity="${opacity}" transform="matrix(${matrix.join(' ')})"/>`;
}
