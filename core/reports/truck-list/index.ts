export { truckList } from './truck-list.ts';
