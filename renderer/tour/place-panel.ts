export type Box = { readonly left: number; readonly top: number; readonly width: number; readonly height: number };
export type Size = { readonly width: number; readonly height: number };

/** Between the panel and what it points at, and between the panel and the edge of the window, CSS px. */
const GAP = 14;

/**
 * Where the panel of the tour stands: beside what is to stay in sight, on the first side that has room for it, so that it hides nothing
 * of it; below comes before above, where rooms have their headings. Where no side has, or there is nothing, it stands in the lower right corner. All in CSS px from the window's upper left corner.
 * @param near what above and below the panel is put level with
 */
export function placePanel(
  at: Box | null,
  panel: Size,
  window: Size,
  near: Box | null = at,
): { readonly left: number; readonly top: number } {
  const corner = { left: window.width - panel.width - GAP, top: window.height - panel.height - GAP };
  if (at === null) return inside(corner, panel, window);
  const [right, bottom] = [at.left + at.width, at.top + at.height];
  const sides = [
    { fits: right + GAP + panel.width + GAP <= window.width, left: right + GAP, top: at.top },
    { fits: at.left - GAP - panel.width >= GAP, left: at.left - GAP - panel.width, top: at.top },
    { fits: bottom + GAP + panel.height + GAP <= window.height, left: near?.left ?? at.left, top: bottom + GAP },
    { fits: at.top - GAP - panel.height >= GAP, left: near?.left ?? at.left, top: at.top - GAP - panel.height },
  ];
  return inside(sides.find((side) => side.fits) ?? corner, panel, window);
}

function inside({ left, top }: { readonly left: number; readonly top: number }, panel: Size, window: Size) {
  return {
    left: Math.max(GAP, Math.min(left, window.width - panel.width - GAP)),
    top: Math.max(GAP, Math.min(top, window.height - panel.height - GAP)),
  };
}
