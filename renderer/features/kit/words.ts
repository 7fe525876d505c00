/** The words that the kit table offers. */
export const ACCESS = ['en-route', 'on-arrival', 'evening', 'night', 'morning', 'seldom', 'emergency'] as const
export const NIGHT_STATES = ['stored', 'bed', 'in-use', 'outside', 'left-behind'] as const
export const EDGES = ['length', 'width', 'height'] as const
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
