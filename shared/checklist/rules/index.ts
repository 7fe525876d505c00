/** The built-in rules, in the order of the day. */
import { beforeLeavingRules } from './before-leaving.ts'
import { onTheRoadRules } from './on-the-road.ts'
import { arrivingRules } from './arriving.ts'
import { beforeDarkRules } from './before-dark.ts'
import { bedtimeRules } from './bedtime.ts'
import { inTheNightRules } from './in-the-night.ts'
import { morningRules } from './morning.ts'
import { atTheTargetRules } from './at-the-target.ts'
import { checkOutRules } from './check-out.ts'
import { backHomeRules } from './back-home.ts'
import type { Rule } from '../types.ts'

export const BUILT_IN_RULES: readonly Rule[] = [
  ...beforeLeavingRules,
  ...onTheRoadRules,
  ...arrivingRules,
  ...beforeDarkRules,
  ...bedtimeRules,
  ...inTheNightRules,
  ...morningRules,
  ...atTheTargetRules,
  ...checkOutRules,
  ...backHomeRules,
]
