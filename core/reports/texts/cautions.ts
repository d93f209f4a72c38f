/** The cautions that stand on every sheet that names a product. General care only: the label and local rules decide. */
export const CAUTIONS = {
  title: 'Before you start',
  items: [
    'Read the label of every product. What it says is the law, and it stands above this sheet.',
    'Wear at least what the label asks for, while mixing and loading too.',
    'Look at wind, heat and rain to come, and do not treat outside what the label and local rules allow.',
    'Keep off open water, drains, beds and hard ground; sweep granules off pavement.',
    'Keep people and pets away until the label lets them back, and mind bees. Post notices where they are asked for.',
    'Keep machines off ground that is steeper or softer than their makers allow, whatever the plan says. Watch for traffic.',
    'Work under a licensed applicator where one is required, and follow federal, state and local rules.',
    'Rates and limits come from whoever filled in the book. This program gives no advice on products.',
  ],
  /** The same in one line, for a ticket that may be torn off. */
  short:
    'The label is the law: read it before mixing, wear what it asks for, and mind wind, heat, water, slopes, people and pets.',
} as const;

/** What a lawn asks the crew to watch for, on paper and on the screens. */
export const CAUTION_WORDS = {
  pets: 'pets',
  children: 'children play here',
  water: 'open water',
  steep: 'steep ground',
  locked: 'locked gate',
  traffic: 'traffic',
  'neighbour-garden': "neighbor's garden",
  beehives: 'beehives',
} as const;
