import type { Limit } from '../../../core/round/ledger/index.ts';
import { formatNumber } from '../../format/index.ts';
import { seasonWords } from '../../texts/round/index.ts';

const DUST = 1e-9;
const NEAR = 0.8;

export function isOver(share: number): boolean {
  return share > 1 + DUST;
}

export function isNear(share: number): boolean {
  return share > NEAR;
}

/** "45 %", "100 %"; never rounded up to the limit, nor down to it. */
export function shareWords(share: number): string {
  const percent = share * 100;
  if (isOver(share))
    return percent < 100.5 ? `${formatNumber(Math.ceil(percent * 10) / 10, 1)} %` : `${Math.round(percent)} %`;
  return share < 1 - DUST ? `${Math.min(99, Math.round(percent))} %` : '100 %';
}

/** "Forecrop 3, a year", "nitrogen". */
export function limitTitle({ kind, name }: Limit): string {
  if (kind === 'product-year') return seasonWords.limits.aYear(name);
  return kind === 'product-application' ? seasonWords.limits.atOnce(name) : name;
}

/** Who sets a limit. */
export function limitSource({ kind, source }: Limit): string {
  if (kind === 'product-year' || kind === 'product-application') return seasonWords.limits.label;
  return source === '' ? seasonWords.limits.cap : seasonWords.limits.capBy(source);
}
