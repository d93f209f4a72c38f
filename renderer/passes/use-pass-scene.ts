import { useMemo } from 'react';
import type { MapScene } from '../map/index.ts';
import { usePasses } from '../stores/index.ts';

/** A scene with the passes that are looked at. */
export function usePassScene(scene: MapScene): MapScene {
  const picture = usePasses((state) => state.picture);
  const leg = usePasses((state) => state.leg);
  return useMemo(() => (picture === null ? scene : { ...scene, passes: { picture, leg } }), [scene, picture, leg]);
}
