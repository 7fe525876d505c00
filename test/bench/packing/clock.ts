/** The clocks a bench runs by. */

/** Processor time of this process, s: a busy machine does not change a figure. */
export const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1e6
}

/** Time on the wall, s. */
export const wallSeconds = (): number => performance.now() / 1000
