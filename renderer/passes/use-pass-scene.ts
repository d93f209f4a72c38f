import { useMemo } from 'react';
import type { MapScene } from '../map/index.ts';
import { usePasses } from '../stores/index.ts';

/** A scene with the passes that are looked at, where they are of the selected lawn. */
export function usePassScene(scene: MapScene): MapScene {
  const picture = usePasses((state) => state.picture);
  const shown = usePasses((state) => state.shown);
  const leg = usePasses((state) => state.leg);
  return useMemo(() => {
    const isHere = picture !== null && shown?.propertyId === scene.selectedPropertyId;
    return isHere ? { ...scene, passes: { picture, leg } } : scene;
  }, [scene, picture, shown, leg]);
}
