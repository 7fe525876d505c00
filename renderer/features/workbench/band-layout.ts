/** Where the names of the evening's marks stand on the band, so that no two lie on each other. */

export type BandLabel = { readonly id: string; readonly x: number; readonly widthPx: number }
export type PlacedBandLabel = BandLabel & { readonly left: number; readonly row: number }

const GAP_PX = 8

/** Puts each label on the first row that has room at its mark; it may lean left at the right end of the band. */
export function placeBandLabels(
  labels: readonly BandLabel[],
  bandPx: number,
  rows: number,
): readonly PlacedBandLabel[] {
  const ends: number[] = Array.from({ length: rows }, () => -Infinity)
  return [...labels]
    .sort((a, b) => a.x - b.x)
    .flatMap((label): readonly PlacedBandLabel[] => {
      const left = Math.max(0, Math.min(label.x, bandPx - label.widthPx))
      const row = ends.findIndex((end) => end + GAP_PX <= left)
      if (row === -1) return []
      ends[row] = left + label.widthPx
      return [{ ...label, left, row }]
    })
}
