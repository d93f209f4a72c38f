import { type Applicator, readingOf, type Visit } from '../book/index.ts';
import { formatBearing, formatClock, formatNumber, formatSpeed, formatTemperature } from '../units/index.ts';
import { asWritten, known, knownOr, missing, notAsked } from './answers.ts';
import type { Answer, RecordElement, VisitFacts } from './types.ts';

const SECONDS_PER_MINUTE = 60;

/** Elements about the whole visit. A new one is an entry here. */
export const VISIT_ELEMENTS: readonly RecordElement<VisitFacts>[] = [
  {
    id: 'date',
    words: 'Date',
    askedBy: ['7-cfr-110.3', '40-cfr-171.303', 'south-dakota', 'maryland', 'kentucky'],
    canType: false,
    fill: ({ subject, isWritten }) => asWritten(isWritten, subject.on, 'nothing is written down of this visit yet'),
  },
  { id: 'time', words: 'Time', askedBy: ['40-cfr-171.303', 'south-dakota', 'maryland'], canType: false, fill: time },
  {
    id: 'location',
    words: 'Location',
    askedBy: ['7-cfr-110.3', '40-cfr-171.303', 'south-dakota'],
    canType: true,
    fill: location,
  },
  {
    id: 'address',
    words: 'Address',
    askedBy: ['maryland', 'kentucky'],
    canType: true,
    fill: ({ property }) => knownOr(property?.address, 'address of the lawn, in the Ground room'),
  },
  {
    id: 'site',
    words: 'Site',
    askedBy: ['7-cfr-110.3', '40-cfr-171.303', 'south-dakota', 'maryland'],
    canType: true,
    fill: ({ property, book }) =>
      knownOr(property?.siteUse ?? book.firm?.siteUse, 'what is treated: of the lawn, or of the firm for all lawns'),
  },
  {
    id: 'customer',
    words: 'Customer',
    askedBy: ['40-cfr-171.303', 'south-dakota', 'maryland', 'kentucky'],
    canType: true,
    fill: ({ property }) => knownOr(property?.customer?.name, 'name of the customer, in the Ground room'),
  },
  {
    id: 'customer-address',
    words: "Customer's address",
    askedBy: ['40-cfr-171.303', 'south-dakota', 'maryland', 'kentucky'],
    canType: true,
    fill: ({ property }) =>
      property?.customer === undefined
        ? missing('customer, in the Ground room')
        : knownOr(property.customer.address ?? property.address, 'address of the customer, in the Ground room'),
  },
  {
    id: 'applicator',
    words: 'Certified applicator',
    askedBy: ['7-cfr-110.3', '40-cfr-171.303', 'south-dakota', 'maryland', 'kentucky'],
    canType: true,
    fill: (facts) => knownOr(facts.certified?.name, WHO),
  },
  {
    id: 'certification',
    words: 'Certification number',
    askedBy: ['7-cfr-110.3', '40-cfr-171.303', 'south-dakota', 'maryland', 'kentucky'],
    canType: true,
    fill: certification,
  },
  {
    id: 'helpers',
    words: 'Applied under supervision by',
    askedBy: ['40-cfr-171.303'],
    canType: true,
    fill: helpers,
  },
  {
    id: 'wind-speed',
    words: 'Wind',
    askedBy: ['south-dakota', 'maryland'],
    canType: true,
    fill: (facts) => read(facts, 'windMph', (value) => formatSpeed(value, facts.book.units)),
  },
  { id: 'wind-from', words: 'Wind from', askedBy: ['south-dakota', 'maryland'], canType: true, fill: windFrom },
  {
    id: 'temperature',
    words: 'Air temperature',
    askedBy: ['south-dakota'],
    canType: true,
    fill: (facts) => read(facts, 'airF', (value) => formatTemperature(value, facts.book.units)),
  },
  {
    id: 'sky',
    words: 'Weather',
    askedBy: ['maryland'],
    canType: true,
    fill: ({ visit }) => knownOr(visit.conditions?.sky, ON_SITE),
  },
];

const WHO = 'who applied: of the visit in Under way, or one applicator for the rig in the Shed';
const ON_SITE = 'as it was read on site, in Under way';

function time({ visit, isWritten, stop, book }: VisitFacts): Answer {
  const clock = (minutes: number): string => formatClock(minutes * SECONDS_PER_MINUTE, readingOf(book).clock);
  const { arriveMin, leaveMin } = visit;
  if (isWritten && arriveMin !== undefined) {
    return known(leaveMin === undefined ? clock(arriveMin) : `${clock(arriveMin)} to ${clock(leaveMin)}`);
  }
  const lacks = 'when the rig came and left, in Under way';
  if (stop === undefined) return missing(lacks);
  const text = `${clock(stop.arriveSec / SECONDS_PER_MINUTE)} to ${clock(stop.leaveSec / SECONDS_PER_MINUTE)}`;
  return { kind: 'planned', text, lacks };
}

/** The address with the place where the rig parks; the place alone where there is no address. */
function location({ property }: VisitFacts): Answer {
  if (property === undefined) return missing('the lawn, which is no longer in the book');
  const [longitude, latitude] = property.parking;
  const place = `${formatNumber(latitude, 5)}, ${formatNumber(longitude, 5)} (latitude, longitude)`;
  const address = property.address.trim();
  return known(address === '' ? place : `${address}; ${place}`);
}

function certification({ certified }: VisitFacts): Answer {
  if (certified === null) return missing(WHO);
  return knownOr(certified.licence, `certification number of ${certified.name}, in the Shed`);
}

/** Uncertified persons who applied; asked for where there are any, or where it is not said whether the applicator is certified. */
function helpers({ visit, applicator, certified }: VisitFacts): Answer {
  const names = [
    ...(applicator !== null && applicator !== certified ? [applicator.name] : []),
    ...(visit.helpers ?? []).filter((each) => each.trim() !== ''),
  ];
  if (names.length > 0) return known(names.join(', '));
  return isSaidToBeCertified(applicator)
    ? notAsked('the certified applicator applied')
    : missing('whether the applicator is certified, in the Shed');
}

function isSaidToBeCertified(applicator: Applicator | null): boolean {
  return applicator?.certified === true;
}

function read(
  { visit }: VisitFacts,
  name: 'windMph' | 'airF' | 'windFromDeg',
  words: (value: number) => string,
): Answer {
  const value = (visit.conditions as Partial<Record<typeof name, number>> | undefined)?.[name];
  return value === undefined ? missing(ON_SITE) : known(words(value));
}

/** Still air comes from nowhere. */
function windFrom(facts: VisitFacts): Answer {
  const conditions: Visit['conditions'] = facts.visit.conditions;
  if (conditions?.windMph === 0 && conditions.windFromDeg === undefined) return notAsked('no wind');
  return read(facts, 'windFromDeg', formatBearing);
}
