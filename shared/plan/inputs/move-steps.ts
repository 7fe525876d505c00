/** The changeover as steps of the checklist: every move, and every piece that leaves its bin for the night. */
import type { GivenStep } from '../../checklist/index.ts'
import type { Night, Trip } from '../../document/index.ts'
import type { BinMove, Changeover, Move, PackingOutcome } from '../../packing/index.ts'
import { places } from './places.ts'
import type { Places } from './places.ts'

/** Seconds to lift one unit to its other place, in rain through a door: common practice. */
export const MOVE_S = 45
/** Seconds to take one piece out of a bin that stands free, common practice. */
const BIN_MOVE_S = 20

/** Each move of the changeover is a step: at dusk towards the bed, in the morning back; so is each piece taken out of its bin. */
export function moveSteps(trip: Trip, packing: PackingOutcome, night: Night): readonly GivenStep[] {
  const packed = packing.nights.find(({ nightId }) => nightId === night.id)
  if (packed === undefined) return []
  return [
    ...changeoverSteps(places(trip, packing), night.id, packed.changeover, 'dusk'),
    ...changeoverSteps(places(trip, packing), night.id, packed.changeback, 'dawn'),
  ]
}

type When = 'dusk' | 'dawn'
type Told = Pick<GivenStep, 'key' | 'ruleId' | 'text' | 'params' | 'durationS'>

/** Moves in their order, each piece of a bin as soon as its bin stands free; what stands free at no moment comes last. */
function changeoverSteps(
  names: Places,
  nightId: string,
  { moves, binMoves = [] }: Changeover,
  when: When,
): GivenStep[] {
  const binSteps = (done: number | null): Told[] =>
    binMoves.filter(({ afterMoves }) => afterMoves === done).map((move) => binStep(names, nightId, move, when))
  const seen = new Map<string, number>()
  const told = [
    ...binSteps(0),
    ...moves.flatMap((move, index) => {
      const count = (seen.get(move.unitId) ?? 0) + 1
      seen.set(move.unitId, count)
      return [moveStep(names, nightId, { move, count }, when), ...binSteps(index + 1)]
    }),
    ...binSteps(null),
  ]
  return told.map((step, index): GivenStep => ({
    ...step,
    nightId,
    phase: when === 'dusk' ? 'before-dark' : 'morning',
    after: index > 0 ? [told[index - 1]?.key ?? ''] : when === 'dusk' ? ['bed-prepare'] : [],
    notBeforeUtc: null,
    deadlineUtc: null,
    deadlineName: null,
    caution: false,
  }))
}

type Counted = { readonly move: Move; readonly count: number }

function moveStep({ nameOf, words }: Places, nightId: string, { move, count }: Counted, when: When): Told {
  return {
    key: `move-${when}:${nightId}:${move.unitId}${count > 1 ? `:${count}` : ''}`,
    ruleId: `move-${when}`,
    text: { kind: 'key', step: `move.${when}.${manner(move)}`, reason: `move.${when}.reason` },
    params: {
      unit: nameOf(move.unitId),
      from: words(move.from),
      to: words(move.to),
      door: move.door ?? '',
      spot: shift(move),
    },
    durationS: MOVE_S,
  }
}

function binStep({ nameOf, words }: Places, nightId: string, { pieceId, binId, state }: BinMove, when: When): Told {
  return {
    key: `bin-${when}:${nightId}:${pieceId}`,
    ruleId: `bin-${when}`,
    text: { kind: 'key', step: `move.${when}.bin`, reason: `move.${when}.binReason` },
    params: { piece: nameOf(pieceId), bin: nameOf(binId), to: words({ unitId: pieceId, state }) },
    durationS: BIN_MOVE_S,
  }
}

const manner = (move: Move): 'step' | 'wait' | 'within' =>
  move.waits ? 'wait' : shift(move) === '' ? 'step' : 'within'

/** Which way a unit goes inside its own bay, by the longest part of its way; empty where it changes bays. */
function shift({ from, to }: Move): string {
  if (!('bayId' in from) || !('bayId' in to) || from.bayId !== to.bayId) return ''
  const [x = 0, y = 0, z = 0] = to.atMm.map((at, axis) => at - (from.atMm[axis] ?? 0))
  if (Math.abs(x) >= Math.abs(y) && Math.abs(x) >= Math.abs(z)) return x > 0 ? 'front' : x < 0 ? 'rear' : 'turned'
  if (Math.abs(y) >= Math.abs(z)) return y > 0 ? 'right' : 'left'
  return z > 0 ? 'up' : 'down'
}
