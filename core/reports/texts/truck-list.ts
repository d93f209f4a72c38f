/** Words of the truck list. */
export const TRUCK_LIST = {
  title: (rig: string) => `Truck list: ${rig}`,
  carried: { on: 'On', what: 'What', amount: 'Amount', weight: 'Weight', together: 'Together' },
  nothing: 'The plan lists nothing to carry.',
  payload: 'Payload',
  spare: 'To spare',
  over: 'OVER by',
  count: (amount: string, unit: string) => `${amount} ${unit}`,
  heavy: {
    title: 'Too heavy',
    stop: (weight: string) => `Do not drive off like this: ${weight} above the payload.`,
    bags: 'The plan counts the pounds that it needs, this list whole bags. Take only the needed part of the last bag of each product, in its own bag and closed, or leave something else behind.',
  },
  plates: 'The plates on truck, trailer and hitch stand above this sum. Crew, tools and fuel are not in it.',
  fillPoints: {
    title: 'Where it fills up',
    time: 'Time',
    place: 'Fill point',
    take: 'Take on',
    volume: 'Volume',
    next: 'Then on to',
    start: 'before leaving',
    yard: 'The yard',
    together: 'Together',
    onlyStart: 'No fill point on the way: what the truck leaves with lasts for the day.',
    into: (what: string, vessel: string) => `${what} into ${vessel}`,
  },
  aboard: {
    title: 'Always aboard',
    /** Common practice, no source; labels and local rules may ask for more. */
    items: [
      'Label and safety data sheet of every product',
      'What the labels ask to wear, clean water and soap to wash, eyewash',
      'Spill kit, measures, funnel, shovel and broom',
      'Notices to post, run sheet, load tickets, license',
    ],
  },
} as const;
