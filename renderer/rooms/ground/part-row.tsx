import type { ReactNode } from 'react';
import { choosePart, isSamePart, type PartRef, useParts } from '../../stores/index.ts';

type PartRowProps = { readonly part: PartRef; readonly className?: string | undefined; readonly children: ReactNode };

/** A row about a part of a lawn. Its menu is that of the part on the map, which is chosen for it. */
export function PartRow({ part, className, children }: PartRowProps) {
  const choose = () => {
    if (!useParts.getState().parts.some((each) => isSamePart(each, part))) choosePart(part, false);
  };
  return (
    <tr className={className} data-subject="part" onContextMenu={choose}>
      {children}
    </tr>
  );
}
