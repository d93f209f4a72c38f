import { writeCalendar } from './calendar.ts';
import { writePlanGpx } from './gpx.ts';
import { writePlanGeojson, writePlanKml } from './places.ts';
import type { PlanSource, PlanWriteOptions } from './source.ts';
import { writeLoadsTable, writeProductsTable, writeStopsTable, writeWorkTable } from './tables.ts';

/** A kind of file that days of a plan can be written as. */
export type PlanFileWriter = {
  readonly id: string;
  readonly title: string;
  /** Of the file's name, without the dot. */
  readonly extension: string;
  /** What the file does not hold, for whoever chooses. */
  readonly leavesOut: string;
  /** True where it is always the whole plan, whatever days are chosen. */
  readonly isWhole: boolean;
  /** How such a file begins, so that one may be written over an earlier one. */
  readonly begins: RegExp;
  /** The text of the file, UTF-8. The same plan at the same time always gives the same text. */
  readonly write: (source: PlanSource, options: PlanWriteOptions) => string;
};

const CALENDAR_TIMES = 'Its times have no zone: they are read as the clock on the wall.';
const TABLE_BEGINS = /^data,round,date,rig,rig name,/;

/** Every kind of file that days of a plan can be written as. A new one is a function and a line here. */
export const PLAN_WRITERS: readonly PlanFileWriter[] = [
  {
    id: 'gpx',
    title: 'Routes and places for receivers (GPX)',
    extension: 'gpx',
    leavesOut: 'Outlines are left out; routes go straight from place to place, and times stand in the texts.',
    isWhole: false,
    begins: /<gpx[\s>]/,
    write: writePlanGpx,
  },
  {
    id: 'geojson',
    title: 'Routes, stops and treated zones (GeoJSON)',
    extension: 'geojson',
    leavesOut: 'Levels, costs and reasons are left out; routes go straight from place to place.',
    isWhole: false,
    begins: /^\s*\{\s*"type"\s*:\s*"FeatureCollection"/,
    write: writePlanGeojson,
  },
  {
    id: 'kml',
    title: 'Routes, stops and treated zones (KML)',
    extension: 'kml',
    leavesOut: 'Levels, costs and reasons are left out; routes go straight from place to place.',
    isWhole: false,
    begins: /<kml[\s>]/,
    write: writePlanKml,
  },
  {
    id: 'ics',
    title: 'Days and stops for calendars (iCalendar)',
    extension: 'ics',
    leavesOut: `Loads and products are left out. ${CALENDAR_TIMES}`,
    isWhole: false,
    begins: /^BEGIN:VCALENDAR\r?\n/,
    write: writeCalendar,
  },
  {
    id: 'stops-csv',
    title: 'Stops in order (CSV)',
    extension: 'csv',
    leavesOut: 'One row for each stop; work and loads are tables of their own.',
    isWhole: false,
    begins: TABLE_BEGINS,
    write: writeStopsTable,
  },
  {
    id: 'work-csv',
    title: 'Work on every zone (CSV)',
    extension: 'csv',
    leavesOut: 'One row for each zone and treatment; places and loads are tables of their own.',
    isWhole: false,
    begins: TABLE_BEGINS,
    write: writeWorkTable,
  },
  {
    id: 'loads-csv',
    title: 'Loads (CSV)',
    extension: 'csv',
    leavesOut: 'One row for each fill; the products in it are a table of their own.',
    isWhole: false,
    begins: TABLE_BEGINS,
    write: writeLoadsTable,
  },
  {
    id: 'products-csv',
    title: 'Products in the loads (CSV)',
    extension: 'csv',
    leavesOut: 'One row for each product of a load; water is in the table of loads.',
    isWhole: false,
    begins: TABLE_BEGINS,
    write: writeProductsTable,
  },
  {
    id: 'plan-json',
    title: 'The whole plan (JSON)',
    extension: 'json',
    leavesOut: 'Names and outlines of lawns stay in the book.',
    isWhole: true,
    begins: /^\s*\{\s*"format"\s*:\s*"swardway-plan"/,
    write: ({ plan }, { planText }) => planText(plan),
  },
];
