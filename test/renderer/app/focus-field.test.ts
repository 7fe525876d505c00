/** A finding's "Show" goes to the field that it speaks of. */
import { afterEach, describe, expect, it, vi } from 'vitest'
import { focusField } from '../../../renderer/app/focus-field.ts'

const field = (path: string): string => `<label data-path="${path}"><input id="${path}"></label>`
const focused = (): string | undefined => document.activeElement?.id

describe('going to a field', () => {
  const form = ['nights.0.arrive', 'nights.1.arrive', 'nights.1.rules.fire', 'nights.10.arrive'].map(field).join('')
  afterEach(() => {
    document.body.innerHTML = ''
  })

  it.each([
    ['the field itself', ['nights', 1, 'rules', 'fire'], 'nights.1.rules.fire'],
    ['the first one inside a group', ['nights', 1, 'rules'], 'nights.1.rules.fire'],
    ['one beside a field that has no form here', ['nights', 1, 'sleep', 'to'], 'nights.1.arrive'],
    ['the right one of a list of more than ten', ['nights', 10], 'nights.10.arrive'],
  ] as const)('finds %s', (_, path, id) => {
    Element.prototype.scrollIntoView = vi.fn<() => void>()
    document.body.innerHTML = form
    focusField(path)
    expect(focused()).toBe(id)
  })

  it('leaves the focus where nothing of the path has a field', () => {
    document.body.innerHTML = `<button id="here"></button>${form}`
    document.querySelector<HTMLElement>('#here')?.focus()
    focusField(['vehicle', 'bed'])
    expect(focused()).toBe('here')
  })

  it('waits for a screen that is not there yet', async () => {
    focusField(['nights', 1, 'arrive'])
    document.body.innerHTML = form
    await vi.waitFor(() => expect(focused()).toBe('nights.1.arrive'))
  })
})
