/** The phases in their order, and the instants between which each must happen. */
import type { MomentName } from './facts.ts'
import type { Phase } from './types.ts'

export const PHASES: readonly Phase[] = [
  'before-leaving',
  'on-the-road',
  'arriving',
  'before-dark',
  'bedtime',
  'in-the-night',
  'morning',
  'at-the-target',
  'check-out',
  'back-home',
]

/** No step of the phase starts before this instant of its night. */
export const PHASE_FROM: Readonly<Partial<Record<Phase, MomentName>>> = {
  arriving: 'arrive',
  'in-the-night': 'bedtime',
  morning: 'wake',
  'at-the-target': 'depart',
  'check-out': 'backFromTarget',
  'back-home': 'backHome',
}

/** Every step of the phase is done by this instant of its night. */
export const PHASE_TO: Readonly<Partial<Record<Phase, MomentName>>> = {
  'before-leaving': 'leaveHome',
  bedtime: 'bedtime',
  morning: 'depart',
  'check-out': 'checkOutBy',
}

/**
 * Place of a step in the whole trip: what is done at home before leaving comes first for all nights, what is done back
 * home comes last, and between them the nights follow one another.
 */
export function phaseRank(phase: Phase, nightIndex: number, nightCount: number): number {
  if (phase === 'before-leaving') return 0
  if (phase === 'back-home') return 1 + nightCount * PHASES.length
  return 1 + nightIndex * PHASES.length + PHASES.indexOf(phase)
}
