export { fleetComparison } from './fleet-comparison.ts';
