/** Circles in a directed graph, counted by its strongly connected sets of more than one node. Method after Tarjan 1972 (SIAM J. Comput. 1(2)). */

/** `edges` names by node the nodes it leads to, none to itself. */
export const circlesIn = (edges: readonly (readonly number[])[]): number => {
  const order = new Int32Array(edges.length).fill(-1)
  const low = new Int32Array(edges.length)
  const open = new Uint8Array(edges.length)
  const path: number[] = []
  let seen = 0
  let circles = 0
  const close = (node: number): void => {
    let size = 0
    for (let last = path.pop(); last !== undefined; last = path.pop()) {
      open[last] = 0
      size++
      if (last === node) break
    }
    if (size > 1) circles++
  }
  for (let root = 0; root < edges.length; root++) {
    if (order[root] !== -1) continue
    const walk = [{ node: root, next: 0 }]
    for (let at = walk.at(-1); at !== undefined; at = walk.at(-1)) {
      const { node } = at
      if (order[node] === -1) {
        order[node] = low[node] = seen++
        open[node] = 1
        path.push(node)
      }
      const to = edges[node]?.[at.next++]
      if (to === undefined) {
        walk.pop()
        const before = walk.at(-1)?.node
        if (before !== undefined) low[before] = Math.min(low[before] ?? 0, low[node] ?? 0)
        if (low[node] === order[node]) close(node)
      } else if (order[to] === -1) walk.push({ node: to, next: 0 })
      else if (open[to] === 1) low[node] = Math.min(low[node] ?? 0, order[to] ?? 0)
    }
  }
  return circles
}
