/** At the thing that had to be reached. */
import { above, atLeast, atMost, below, equals, every, filled, is, known } from './conditions.ts'
import { rulesOf } from './rule.ts'
import type { Rule } from '../types.ts'

const rule = rulesOf('at-the-target')

export const atTheTargetRules: readonly Rule[] = [
  rule('be-at-target', {
    when: every(is('target.present'), known('target.name'), equals('target.walkMin', 0)),
    durationS: 0,
    params: { target: 'target.name' },
    deadline: 'beAtTarget',
  }),
  rule('be-at-target-on-foot', {
    when: every(is('target.present'), known('target.name'), above('target.walkMin', 0)),
    durationS: 0,
    params: { target: 'target.name', walkMin: 'target.walkMin' },
    deadline: 'beAtTarget',
  }),
  rule('target-tell', {
    when: every(is('target.present'), atLeast('target.walkMin', 20)),
    durationS: 60,
  }),
  rule('target-lock', {
    when: every(is('target.present'), filled('load.valuables')),
    durationS: 60,
  }),
  rule('target-warm', {
    when: every(is('target.present'), below('weather.lowC', 0)),
    durationS: 60,
  }),
  rule('target-drive-ice', {
    when: every(is('target.present'), atMost('weather.lowC', 1)),
    durationS: 0,
    caution: true,
  }),
]
