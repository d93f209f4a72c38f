/** Problems of up to this many jobs have every position reckoned in full. */
export const SMALL = 8;
