/** Does the vehicle make sense: openings on their faces, masses that leave room for a load, batteries that fit together? */
import type { DocumentPath, Problem } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import type { Bay, Opening, Vehicle } from '../schema/vehicle.ts'
import { AXES, found, idSet, idsTwice, placed, unknownId } from './checks.ts'

/** Axle masses are read off a scale or a plate: their sum may miss the ready mass by this share, common practice. */
const AXLE_SUM_TOLERANCE01 = 0.05

/** The axes of a face. */
const FACE_AXES = [0, 1] as const

export function checkVehicle(trip: Trip): readonly Problem[] {
  const { vehicle } = trip
  return [
    ...idsTwice(placed(vehicle.bays, 'vehicle', 'bays')),
    ...idsTwice(vehicle.bays.flatMap((bay, index) => placed(bay.openings, 'vehicle', 'bays', index, 'openings'))),
    ...idsTwice(placed(vehicle.bedHeaters, 'vehicle', 'bedHeaters')),
    ...vehicle.bays.flatMap((bay, index) => checkBay(bay, ['vehicle', 'bays', index])),
    ...checkBed(trip),
    ...checkMasses(vehicle.masses),
    ...checkPower(vehicle),
  ]
}

/** Sizes of a face on the two other axes, in x, y, z order. */
function faceSizeMm(bay: Bay, face: Opening['face']): readonly [number, number] {
  const [x, y, z] = bay.sizeMm
  if (face === 'x-' || face === 'x+') return [y, z]
  return face === 'z+' ? [x, y] : [x, z]
}

function checkBay(bay: Bay, path: DocumentPath): readonly Problem[] {
  const openings = bay.openings.flatMap((opening, index) => {
    const face = faceSizeMm(bay, opening.face)
    const at = [...path, 'openings', index]
    const empty = FACE_AXES.some((axis) => opening.fromMm[axis] >= opening.toMm[axis])
    if (empty) return [found('opening-empty', [...at, 'toMm'], opening.toMm, { bay: bay.name, opening: opening.name })]
    const outside = FACE_AXES.some((axis) => opening.fromMm[axis] < 0 || opening.toMm[axis] > face[axis])
    if (!outside) return []
    return [
      found('opening-outside-face', [...at, 'toMm'], opening.toMm, {
        bay: bay.name,
        opening: opening.name,
        face: opening.face,
        size: face.join(' × '),
      }),
    ]
  })
  const obstacles = bay.obstacles.flatMap((obstacle, index) => {
    const inside = AXES.every((axis) => {
      const low = obstacle.atMm[axis]
      return low >= 0 && low + obstacle.sizeMm[axis] <= bay.sizeMm[axis]
    })
    return inside
      ? []
      : [
          found('obstacle-outside-bay', [...path, 'obstacles', index], obstacle.atMm, {
            bay: bay.name,
            obstacle: obstacle.label,
            size: bay.sizeMm.join(' × '),
          }),
        ]
  })
  const slopes = bay.slopes.flatMap((slope, index) => {
    const depth = slope.face === 'x-' || slope.face === 'x+' ? bay.sizeMm[0] : bay.sizeMm[1]
    const inset = Math.max(slope.insetFloorMm, slope.insetTopMm)
    return inset < depth
      ? []
      : [
          found('slope-too-deep', [...path, 'slopes', index], inset, {
            bay: bay.name,
            slope: slope.label,
            depth: String(depth),
          }),
        ]
  })
  return [...openings, ...obstacles, ...slopes]
}

function checkBed(trip: Trip): readonly Problem[] {
  const bed = trip.vehicle.bed
  const path = ['vehicle', 'bed'] as const
  const pieces = idSet(trip.kit.pieces)
  const mattresses = bed.mattressPieceIds.flatMap((id, index) => {
    const at = [...path, 'mattressPieceIds', index]
    const piece = trip.kit.pieces.find((one) => one.id === id)
    if (piece === undefined) return unknownId(id, pieces, 'piece', at)
    const lies = piece.bedding?.kind === 'mattress' || piece.bedding?.kind === 'mat'
    return lies ? [] : [found('mattress-not-bedding', at, id, { piece: piece.name })]
  })
  const bare = bed.mattressPieceIds.length === 0 && bed.fittedMattressM2KPerW === undefined
  return [
    ...mattresses,
    ...(bare ? [found('bed-without-mattress', [...path, 'mattressPieceIds'], bed.mattressPieceIds)] : []),
    ...(bed.sizeMm[0] > bed.flatLengthMm
      ? [found('bed-longer-than-flat', [...path, 'sizeMm', 0], bed.sizeMm[0], { maximum: String(bed.flatLengthMm) })]
      : []),
    ...(bed.sizeMm[1] > bed.flatWidthMm
      ? [found('bed-wider-than-flat', [...path, 'sizeMm', 1], bed.sizeMm[1], { maximum: String(bed.flatWidthMm) })]
      : []),
  ]
}

function checkMasses(masses: Vehicle['masses']): readonly Problem[] {
  const path = ['vehicle', 'masses'] as const
  const problems: Problem[] = []
  if (masses.readyG >= masses.permittedG) {
    problems.push(found('payload-none', [...path, 'readyG'], masses.readyG, { maximum: String(masses.permittedG) }))
  }
  for (const name of ['frontAxle', 'rearAxle'] as const) {
    const axle = masses[name]
    if (axle !== undefined && axle.readyG > axle.limitG) {
      problems.push(found('axle-over-limit', [...path, name, 'readyG'], axle.readyG, { maximum: String(axle.limitG) }))
    }
  }
  if (masses.frontAxle !== undefined && masses.rearAxle !== undefined) {
    const sum = masses.frontAxle.readyG + masses.rearAxle.readyG
    if (Math.abs(sum - masses.readyG) > masses.readyG * AXLE_SUM_TOLERANCE01) {
      problems.push(
        found('axle-sum', [...path, 'rearAxle', 'readyG'], masses.rearAxle.readyG, {
          sum: String(sum),
          ready: String(masses.readyG),
        }),
      )
    }
  }
  if (masses.roofFittedG !== undefined && masses.roofLimitG !== undefined && masses.roofFittedG > masses.roofLimitG) {
    problems.push(
      found('roof-over-limit', [...path, 'roofFittedG'], masses.roofFittedG, { maximum: String(masses.roofLimitG) }),
    )
  }
  return problems
}

function checkPower(vehicle: Vehicle): readonly Problem[] {
  const { battery, charging, heater } = vehicle
  const problems: Problem[] = []
  if (vehicle.drive === 'electric' && (battery === undefined || charging === undefined)) {
    const field = battery === undefined ? 'battery' : 'charging'
    problems.push(found('electric-without-battery', ['vehicle', field], undefined))
  }
  if (battery !== undefined && battery.reserve01 >= battery.chargeLimit01) {
    problems.push(
      found('reserve-above-limit', ['vehicle', 'battery', 'reserve01'], battery.reserve01, {
        maximum: String(battery.chargeLimit01),
      }),
    )
  }
  if (charging !== undefined && charging.minimumA > charging.maximumA) {
    problems.push(
      found('current-least-above-most', ['vehicle', 'charging', 'minimumA'], charging.minimumA, {
        maximum: String(charging.maximumA),
      }),
    )
  }
  const unordered = heater.cop.findIndex((point, index) => {
    const before = heater.cop[index - 1]
    return before !== undefined && point.outsideC <= before.outsideC
  })
  if (unordered > 0) {
    problems.push(
      found('cop-out-of-order', ['vehicle', 'heater', 'cop', unordered, 'outsideC'], heater.cop[unordered]?.outsideC),
    )
  }
  return problems
}
