/** Traits of a piece that are either so or not. */
export const FLAGS = [
  'food',
  'scented',
  'valuable',
  'fragile',
  'needsRestraint',
  'wetAfterUse',
  'fuel',
  'mayStandOutside',
  'mustCarry',
] as const
