/**
 * The hatchings that the map is drawn with. Leaflet's paths name them by id. Turf is diagonal, what is not treated is crossed,
 * water is dotted, so that the map reads in grey; ground that passes go over twice is dotted finely, ground that they leave is crossed.
 */
export function MapPatterns() {
  return (
    <svg className="pattern-store" aria-hidden="true" width="0" height="0">
      <defs>
        <Hatch id="hatch-turf" tone="turf" step={7} />
        <Hatch id="hatch-turf-selected" tone="turf-selected" step={5} />
        <Hatch id="hatch-turf-dim" tone="turf-dim" step={9} />
        <Hatch id="hatch-avoided" tone="avoided" step={14} />
        <Cross id="cross-house" tone="house" step={7} />
        <Cross id="cross-paving" tone="paving" step={11} />
        <Cross id="cross-bed" tone="bed" step={5} />
        <pattern id="dots-water" className="pattern pattern-water" width="6" height="6" patternUnits="userSpaceOnUse">
          <rect width="6" height="6" />
          <circle cx="1.5" cy="1.5" r="0.9" />
          <circle cx="4.5" cy="4.5" r="0.9" />
        </pattern>
        <pattern
          id="pass-overlap"
          className="pattern pattern-overlap"
          width="4"
          height="4"
          patternUnits="userSpaceOnUse"
        >
          <rect width="4" height="4" />
          <circle cx="1" cy="1" r="0.7" />
          <circle cx="3" cy="3" r="0.7" />
        </pattern>
        <Cross id="pass-missed" tone="missed" step={4} />
        <marker
          id="pass-arrow"
          markerUnits="userSpaceOnUse"
          markerWidth="9"
          markerHeight="9"
          refX="5"
          refY="4.5"
          orient="auto"
          overflow="visible"
        >
          <path className="pass-arrow" d="M1.5 1L6.5 4.5L1.5 8" />
        </marker>
      </defs>
    </svg>
  );
}

type PatternProps = { readonly id: string; readonly tone: string; readonly step: number };

function Hatch({ id, tone, step }: PatternProps) {
  return (
    <pattern
      id={id}
      className={`pattern pattern-${tone}`}
      width={step}
      height={step}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <rect width={step} height={step} />
      <path d={`M0 0V${step}`} />
    </pattern>
  );
}

function Cross({ id, tone, step }: PatternProps) {
  return (
    <pattern
      id={id}
      className={`pattern pattern-${tone}`}
      width={step}
      height={step}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <rect width={step} height={step} />
      <path d={`M0 0V${step}M0 0H${step}`} />
    </pattern>
  );
}
