import type { Block } from './blocks.ts';

/** The cautions that stand on every sheet that names a product. General care only: the label and local rules decide. */
export const USUAL_CAUTIONS: Block = {
  kind: 'cautions',
  title: 'Before you start',
  items: [
    'Read the label of every product; what it says is the law and stands above this sheet.',
    'Wear at least what the label asks for.',
    'Look at wind, heat and rain to come, and do not treat outside what the label allows.',
    'Keep off open water, beds, hard ground, people, pets and bees; sweep granules off pavement.',
    'Keep the machine off ground that is steeper or softer than it is made for, whatever the plan says.',
    'Work under a licensed applicator where your state asks for one, and follow its posting and notice rules.',
  ],
};

/** Words for the cautions of a property. */
export const CAUTION_WORDS = {
  pets: 'pets',
  children: 'children play here',
  water: 'open water',
  steep: 'steep ground',
  locked: 'gate locked',
  traffic: 'traffic',
  'neighbour-garden': "neighbour's garden",
  beehives: 'beehives',
} as const;
