/** Calls a host as a page does, with types. */
import { expect } from 'vitest'
import type { Host, OperationInput, OperationName, OperationOutput } from '../../../shared/host/index.ts'
import type { Problem, Result } from '../../../shared/result/index.ts'

export const ask = async <N extends OperationName>(
  host: Host,
  caller: string,
  name: N,
  input: OperationInput<N>,
): Promise<Result<OperationOutput<N>>> => (await host.handle(caller, name, input)) as Result<OperationOutput<N>>

export function value<T>(result: Result<T>): T {
  if (!result.ok) expect.fail(`problem ${result.problem.code} ${JSON.stringify(result.problem.params)}`)
  return result.value
}

export function refusal(result: Result<unknown>): Problem {
  if (result.ok) expect.fail('was not refused')
  return result.problem
}
