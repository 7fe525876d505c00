/** Processor time of this process, so that a busy machine does not change a figure. */
export const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1e6
}
