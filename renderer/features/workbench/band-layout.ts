/** Where the names of the evening's marks stand on the band, so that no two lie on each other. */

export type BandLabel = {
  readonly id: string
  readonly x: number
  readonly widthPx: number
  /** 0 is placed first; where room is short the highest go without a name. */
  readonly rank: number
}
export type PlacedBandLabel = BandLabel & {
  readonly left: number
  readonly row: number
  /** Its mark is at its right end, not at its left. */
  readonly leans: boolean
}

const GAP_PX = 8

/** Puts each label on the first row that has room right of its mark, else left of it; the most wanted first. */
export function placeBandLabels(
  labels: readonly BandLabel[],
  bandPx: number,
  rows: number,
): readonly PlacedBandLabel[] {
  const placed: PlacedBandLabel[] = []
  const free = (row: number, left: number, widthPx: number): boolean =>
    left >= 0 &&
    left + widthPx <= bandPx &&
    placed.every(
      (other) =>
        other.row !== row || left >= other.left + other.widthPx + GAP_PX || left + widthPx + GAP_PX <= other.left,
    )
  for (const label of [...labels].sort((a, b) => a.rank - b.rank || a.x - b.x)) {
    const tries = [false, true].flatMap((leans) =>
      Array.from({ length: rows }, (_, row) => ({ leans, row, left: leans ? label.x - label.widthPx : label.x })),
    )
    const found = tries.find(({ row, left }) => free(row, left, label.widthPx))
    if (found !== undefined) placed.push({ ...label, ...found })
  }
  return placed.sort((a, b) => a.x - b.x)
}

export type SunTimes = {
  readonly sunset: number | null
  readonly dusk: number | null
  readonly dawn: number | null
  readonly sunrise: number | null
}

export type SkyStretch = { readonly id: string; readonly from: number; readonly to: number }

/** Stretches of the sky, from full day to full night, in the order of the evening. */
export function skyStretches(
  { fromUtc, toUtc }: { readonly fromUtc: number; readonly toUtc: number },
  { sunset, dusk, dawn, sunrise }: SunTimes,
): readonly SkyStretch[] {
  const stretches = [
    { id: 'day', from: fromUtc, to: sunset ?? fromUtc },
    { id: 'dusk', from: sunset ?? fromUtc, to: dusk ?? sunset ?? fromUtc },
    { id: 'night', from: dusk ?? sunset ?? fromUtc, to: dawn ?? sunrise ?? toUtc },
    { id: 'dawn', from: dawn ?? toUtc, to: sunrise ?? toUtc },
    { id: 'morning', from: sunrise ?? toUtc, to: toUtc },
  ]
  return stretches.filter((stretch) => stretch.to > stretch.from)
}
