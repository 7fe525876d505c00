/** When the acid of a lead battery freezes: the emptier it is, the nearer to water. */

/** Freezing point of the electrolyte by state of charge, °C (handbook values of starter batteries, from memory). */
const FREEZES_C: readonly (readonly [charge01: number, tempC: number])[] = [
  [0, -8],
  [0.25, -15],
  [0.5, -24],
  [0.75, -37],
  [1, -57],
]

/** Freezing point of the acid, °C, at a state of charge, 0 to 1; straight between the listed ones. */
export function acidFreezesC(charge01: number): number {
  const share01 = Math.min(1, Math.max(0, charge01))
  const above = Math.max(
    1,
    FREEZES_C.findIndex(([at01]) => at01 >= share01),
  )
  const [from01, fromC] = FREEZES_C[above - 1] ?? [0, 0]
  const [to01, toC] = FREEZES_C[above] ?? [1, 0]
  return fromC + ((toC - fromC) * (share01 - from01)) / (to01 - from01)
}
