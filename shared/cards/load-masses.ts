/** Masses and axles with what is left under each limit. */
import type { Block, Column } from './model.ts'
import type { Names } from './names.ts'
import type { CardInput } from './plan-parts.ts'

type Line = { readonly label: string; readonly massG: number; readonly limitG: number }

export function massBlocks(input: CardInput, names: Names): readonly Block[] {
  const { text } = input
  const lines = [...vehicleLines(input), ...bayLines(input, names)]
  const columns: readonly Column[] = [
    { title: '', share: 40, align: 'left', strong: true },
    { title: text.t('cards.column.loaded'), share: 20, align: 'right' },
    { title: text.t('cards.column.limit'), share: 20, align: 'right' },
    { title: text.t('cards.column.margin'), share: 20, align: 'right', strong: true },
  ]
  const rows = lines.map(({ label, massG, limitG }) => [
    label,
    text.mass(massG).text,
    text.mass(limitG).text,
    massG > limitG ? text.t('cards.over', { overG: massG - limitG }) : text.mass(limitG - massG).text,
  ])
  return [
    { kind: 'heading', level: 2, text: text.t('cards.load.masses') },
    { kind: 'table', columns, rows },
  ]
}

function vehicleLines({ plan, trip, text }: CardInput): readonly Line[] {
  const { mass } = plan.packing
  const { frontAxle, rearAxle, roofLimitG } = trip.vehicle.masses
  const lines: Line[] = [{ label: text.t('cards.mass.payload'), massG: mass.loadG, limitG: mass.payloadG }]
  if (frontAxle !== undefined && mass.frontAxleG !== null) {
    lines.push({ label: text.t('cards.mass.front'), massG: mass.frontAxleG, limitG: frontAxle.limitG })
  }
  if (rearAxle !== undefined && mass.rearAxleG !== null) {
    lines.push({ label: text.t('cards.mass.rear'), massG: mass.rearAxleG, limitG: rearAxle.limitG })
  }
  if (roofLimitG !== undefined && mass.roofG > 0) {
    lines.push({ label: text.t('cards.mass.roof'), massG: mass.roofG, limitG: roofLimitG })
  }
  return lines
}

const bayLines = ({ plan, trip }: CardInput, names: Names): readonly Line[] =>
  trip.vehicle.bays.flatMap((bay) => {
    const massG = plan.packing.mass.bayG[bay.id] ?? 0
    return massG > 0 ? [{ label: names.bay(bay.id), massG, limitG: bay.loadLimitG }] : []
  })
