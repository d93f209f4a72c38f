import type { Property, Zone } from '../../../core/book/index.ts';
import { metresToFeet, quantity } from '../../../core/units/index.ts';
import {
  chooseHeights,
  type HeightSlope,
  readHeightSlope,
  showError,
  showNews,
  useFormat,
  useHeights,
} from '../../stores/index.ts';
import { groundWords } from '../../texts/ground/index.ts';
import { Button, Field } from '../../ui/index.ts';
import { putZone, withOptional } from './zone-edits.ts';

type SlopeProps = { readonly property: Property; readonly zone: Zone };

/** Reads the slope of a drawn zone, and which way it falls, from a GeoTIFF of heights: one edit, which says where it is from. */
export function SlopeFromHeights({ property, zone }: SlopeProps) {
  const { file, isReading } = useHeights();
  const words = useFormat();
  const outline = zone.shape.kind === 'drawn' ? zone.shape.geometry : null;
  const read = async (): Promise<void> => {
    if (outline === null) return;
    const slope = await readHeightSlope(outline);
    if (!slope.ok) return showError(slope.error);
    const source = sourceWords(slope.value, (feet) => words.length(feet));
    const working = { kind: 'elevation', source } as const;
    const { slopeDeg, downhillDeg } = slope.value;
    const sloped = withOptional<Zone, 'downhillDeg'>(zone, 'downhillDeg', downhillDeg);
    const done = putZone(property, { ...sloped, slopeDeg, slopeWorking: working }, groundWords.slopeFromHeights.change);
    if (done.ok) showNews(`${zone.name}: ${slopeDeg}°, ${source}`, true);
    else showError(done.error);
  };
  const choose = async (): Promise<void> => {
    if (await chooseHeights()) await read();
  };
  const chooseWords = file === null ? groundWords.slopeFromHeights.readFile : groundWords.slopeFromHeights.otherFile;
  const whyNot =
    outline === null
      ? groundWords.slopeFromHeights.noOutline
      : isReading
        ? groundWords.slopeFromHeights.beingRead
        : null;
  return (
    <Field
      label={groundWords.slopeFromHeights.heights}
      note={file === null ? groundWords.slopeFromHeights.heightsNote : file.name}
    >
      {file !== null && (
        <Button
          look="quiet"
          whyNot={whyNot}
          label={groundWords.slopeFromHeights.readOf(zone.name, file.name)}
          onPress={() => void read()}
        >
          {groundWords.slopeFromHeights.read}
        </Button>
      )}
      <Button look="quiet" whyNot={whyNot} label={`${chooseWords} (${zone.name})`} onPress={() => void choose()}>
        {chooseWords}
      </Button>
    </Field>
  );
}

/** Where the slope is from, for the zone's record and the sheets. */
function sourceWords(
  { fileName, samples, residualM, isUnitStated }: HeightSlope,
  length: (feet: number) => string,
): string {
  const off = length(metresToFeet(quantity<'m'>(residualM)));
  const unit = isUnitStated ? '' : groundWords.slopeFromHeights.metresTaken;
  return groundWords.slopeFromHeights.source(fileName, samples, off, unit);
}
