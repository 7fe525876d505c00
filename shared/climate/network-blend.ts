/** The network at any wind, between two that stand: wind turns all night, and a network rounded to tenths of it would jitter the glass by 0.03 K. */
import type { Network, Pane } from './network.ts'

type Writable<T> = { -readonly [Name in keyof T]: T[Name] }

/** A network that is rewritten in place. */
export type Blend = Writable<Omit<Network, 'panes'>> & { readonly panes: readonly Writable<Pane>[] }

/** A network of its own, equal to another. */
export const blendOf = (network: Network): Blend => ({ ...network, panes: network.panes.map((pane) => ({ ...pane })) })

/**
 * Writes the network between two of one cabin under the same covers, at a share of the way in wind.
 * Capacities and what no wind moves stay as they are.
 */
export function blend(into: Blend, low: Network, high: Network, share01: number): void {
  into.frontBodyWPerK = between(low.frontBodyWPerK, high.frontBodyWPerK, share01)
  into.bedBodyWPerK = between(low.bedBodyWPerK, high.bedBodyWPerK, share01)
  into.bedFloorWPerK = between(low.bedFloorWPerK, high.bedFloorWPerK, share01)
  into.floorOutWPerK = between(low.floorOutWPerK, high.floorOutWPerK, share01)
  into.outerFilmWPerM2K = between(low.outerFilmWPerM2K, high.outerFilmWPerM2K, share01)
  into.scale = between(low.scale, high.scale, share01)
  into.shellWPerK = between(low.shellWPerK, high.shellWPerK, share01)
  for (let index = 0; index < into.panes.length; index += 1) {
    const pane = into.panes[index]
    const from = low.panes[index]
    const to = high.panes[index]
    if (pane === undefined || from === undefined || to === undefined) return
    pane.innerWPerK = between(from.innerWPerK, to.innerWPerK, share01)
    pane.outerWPerK = between(from.outerWPerK, to.outerWPerK, share01)
  }
}

const between = (from: number, to: number, share01: number): number => from + (to - from) * share01
