/** How the vehicle should stand on the pitch: which way round, where ramps go, and whether the lead reaches. */
import type { Night, Piece, Trip } from '../document/index.ts'
import type { PitchAdvice } from './types.ts'

/** Distance between the wheels of an axle where the trip does not say: 1.5 to 1.6 m on cars, common practice. */
const TRACK_MM = 1550
/** Bumper to rear sill and windscreen to nose together, common practice for estates and small vans. */
const OVERHANG_MM = 900
const BODY_WIDTH_MM = 1850
/** A lead laid tight trips people and pulls on the plug: slack wanted, common practice. */
const SLACK_MM = 500
/** With less lead over than this, and as much to be won by turning round, turning is worth it, common practice. */
const TIGHT_MM = 1500
/** Slopes under this are left alone: 1 % along the body, common practice. */
const LEVEL_ENOUGH_01 = 0.01

/** Advice for one night's pitch, from its slope, the post's side and the lead on board. */
export function pitchAdvice(trip: Trip, night: Night): PitchAdvice {
  const { pitch } = night
  const { bed, masses } = trip.vehicle
  const along = pitch.slopeDownTowards === 'nose' || pitch.slopeDownTowards === 'tail'
  const across = pitch.slopeDownTowards === 'left' || pitch.slopeDownTowards === 'right'
  const rise = (spanMm: number): number => Math.round(pitch.slope01 * spanMm)
  const headLow =
    (pitch.slopeDownTowards === 'nose' && bed.headEnd === 'front') ||
    (pitch.slopeDownTowards === 'tail' && bed.headEnd === 'rear')
  const level = pitch.slope01 < LEVEL_ENOUGH_01 || (!along && !across)
  const runs = cableRuns(trip, night)
  const leadMm = leadLengthMm(trip, night)
  const reaches = (runMm: number | null): boolean | null =>
    runMm === null || leadMm === null ? null : leadMm >= runMm + SLACK_MM
  const asIs = reaches(runs.asParkedMm)
  const turned = reaches(runs.turnedMm)
  return {
    park: tightAsParked(runs, leadMm) ? 'nose-out' : wayToPark(asIs, turned, along && !level ? headLow : null),
    headUphill: along && !level ? !headLow : null,
    rampUnder: level ? null : rampSide(pitch.slopeDownTowards),
    rampMm: level ? 0 : rise(along ? (masses.wheelbaseMm ?? 0) : TRACK_MM),
    riseOverBedMm: rise(along ? bed.sizeMm[0] : bed.sizeMm[1]),
    leadReaches: asIs === true || turned === true ? true : (asIs ?? turned),
  }
}

/** The lead reaches as parked but with little over, and would have more turned round: the inlet is on the wrong side. */
const tightAsParked = (runs: ReturnType<typeof cableRuns>, leadMm: number | null): boolean =>
  runs.asParkedMm !== null &&
  runs.turnedMm !== null &&
  leadMm !== null &&
  leadMm - runs.asParkedMm < TIGHT_MM &&
  runs.asParkedMm - runs.turnedMm > TIGHT_MM

function rampSide(downTowards: Night['pitch']['slopeDownTowards']): PitchAdvice['rampUnder'] {
  switch (downTowards) {
    case 'nose':
      return 'front'
    case 'tail':
      return 'rear'
    case 'left':
      return 'left'
    case 'right':
      return 'right'
    case 'level':
      return null
  }
}

/** The lead decides first, for without it there is no heat; then the head end. The run was measured nose-in. */
function wayToPark(
  asParked: boolean | null,
  turned: boolean | null,
  headLowAsParked: boolean | null,
): PitchAdvice['park'] {
  if (asParked === false && turned === true) return 'nose-out'
  if (asParked === true && turned === false) return 'nose-in'
  if (headLowAsParked !== null) return headLowAsParked ? 'nose-out' : 'nose-in'
  return asParked === null && turned === null ? 'not-known' : 'either'
}

/** Length of cable from post to inlet, as the user measured it and with the vehicle turned round; walked along the body, not through it. */
function cableRuns(trip: Trip, night: Night): { asParkedMm: number | null; turnedMm: number | null } {
  const inlet = trip.vehicle.charging?.inlet
  const { postSide, cableRunMm } = night.pitch
  if (night.hookup === undefined || cableRunMm === 0) return { asParkedMm: null, turnedMm: null }
  if (inlet === undefined || postSide === 'not-known') return { asParkedMm: cableRunMm, turnedMm: null }
  const lengthMm = (trip.vehicle.masses.wheelbaseMm ?? 2700) + 2 * OVERHANG_MM
  const post = { x: postSide.endsWith('front') ? lengthMm : 0, y: postSide.startsWith('left') ? 0 : BODY_WIDTH_MM }
  const at = {
    x: Math.max(0, Math.min(lengthMm, inlet.xMm + OVERHANG_MM / 2)),
    y: inlet.side === 'right' ? BODY_WIDTH_MM : 0,
  }
  const walk = (x: number, y: number): number => Math.abs(x - post.x) + Math.abs(y - post.y)
  const turnedMm = cableRunMm - walk(at.x, at.y) + walk(lengthMm - at.x, BODY_WIDTH_MM - at.y)
  return { asParkedMm: cableRunMm, turnedMm: Math.max(0, turnedMm) }
}

/** Longest lead of the load without the extension that the night names; where there is none, the charging unit's own. */
function leadLengthMm(trip: Trip, night: Night): number | null {
  const lengths = (purpose: Piece['purpose']): readonly number[] =>
    trip.kit.pieces
      .filter((piece) => !piece.spare && piece.purpose === purpose && piece.id !== night.hookup?.extensionPieceId)
      .flatMap((piece) => piece.electrical?.lengthMm ?? [])
  const leads = lengths('lead')
  const own = leads.length > 0 ? leads : lengths('charging-unit')
  return own.length === 0 ? null : Math.max(...own)
}
